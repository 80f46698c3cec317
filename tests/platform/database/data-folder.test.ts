import fs from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { chooseDataFolder } from '../../../lib/platform/database/data-folder.ts'
import {
  asNamelessUser,
  asOrdinaryUser,
  freshDataFolder,
  freshFolder,
  linesOf,
  openOnce,
  scriptCommand,
  withMount,
} from './processes.ts'

const OPEN_ONCE = scriptCommand('open-once.ts').join(' ')

/** Nothing but what the test itself put there. */
function expectUntouched(folder: string, names: readonly string[] = []): void {
  expect(fs.readdirSync(folder)).toEqual(names)
}

describe('which folder it is', () => {
  it('the one that KERFBOOK_DATA names, made absolute', () => {
    expect(chooseDataFolder('some/folder')).toBe(path.resolve('some/folder'))
  })

  it('for root one by the path of the repository, for anybody else one inside it', () => {
    const [one, two] = [freshFolder(), freshFolder()]
    if (process.getuid?.() === 0) {
      expect(chooseDataFolder(undefined, one)).toMatch(/^\/var\/lib\/kerfbook\/[0-9a-f]{16}$/)
      expect(chooseDataFolder(undefined, one)).toBe(chooseDataFolder(undefined, `${one}/`))
      expect(chooseDataFolder(undefined, one)).not.toBe(chooseDataFolder(undefined, two))
    } else expect(chooseDataFolder(undefined, one)).toBe(path.join(one, '.data'))
  })
})

describe('a folder in which no database can be', () => {
  it('[P11] a full disk is said with what is free and what is needed, and nothing is left on it', () => {
    const folder = freshFolder()
    const script = `${OPEN_ONCE}\necho "{\\"left\\": \\"$(ls ${folder})\\"}"`
    const [refused, left] = withMount(folder, 'size=8m', script, { KERFBOOK_DATA: folder })
    expect(refused).toMatchObject({ refused: { kind: 'folder-full', folder, free: 7, needed: 128 } })
    expect(refused!['message']).toContain('is full: 7 MB are free and 128 MB are needed')
    expect(left).toEqual({ left: 'kerfbook-data.json' })
  })

  it('[P11] a disk that has become full since is said, and with room again the database opens', () => {
    const folder = freshFolder()
    const data = path.join(folder, 'data')
    const script = [
      OPEN_ONCE,
      `dd if=/dev/zero of=${folder}/filler bs=64k 2>/dev/null || true`,
      OPEN_ONCE,
      `rm ${folder}/filler`,
      OPEN_ONCE,
    ].join('\n')
    const lines = withMount(folder, 'size=300m', script, { KERFBOOK_DATA: data })
    expect(lines[0]).toMatchObject({ opened: data })
    expect(lines[1]).toMatchObject({ refused: { kind: 'folder-full', folder: data, free: 0 } })
    expect(lines[2]).toMatchObject({ opened: data })
  })

  it('a folder that can only be read', () => {
    const folder = freshFolder()
    for (const data of [folder, path.join(folder, 'data')]) {
      expect(withMount(folder, 'ro', OPEN_ONCE, { KERFBOOK_DATA: data })).toMatchObject([
        { refused: { kind: 'folder-read-only', folder: data } },
      ])
    }
  })

  it('a path that is too long, whether for PostgreSQL or for the system', () => {
    const folder = freshFolder()
    const long = path.join(folder, ...Array.from({ length: 9 }, () => 'a'.repeat(100)))
    const refused = openOnce(long)
    expect(refused).toMatchObject({ refused: { kind: 'folder-path-too-long', bytes: long.length } })
    const one = path.join(folder, 'b'.repeat(300))
    expect(openOnce(one)).toMatchObject({ refused: { kind: 'folder-path-too-long' } })
    expectUntouched(folder)
  })

  it('a temporary folder whose path is too long for a socket', () => {
    const folder = freshDataFolder()
    const temporary = path.join(freshFolder(), 'c'.repeat(90))
    fs.mkdirSync(temporary)
    expect(openOnce(folder, { TMPDIR: temporary })).toMatchObject({
      refused: { kind: 'socket-path-too-long', folder: temporary },
    })
    expect(fs.readdirSync(temporary).filter((name) => name.startsWith('kerfbook'))).toEqual([])
    expectUntouched(folder, ['kerfbook-data.json'])
  })

  it('a folder that holds something else is left alone', () => {
    const folder = freshFolder()
    fs.writeFileSync(path.join(folder, 'letter.txt'), 'not ours')
    const refused = openOnce(folder)
    expect(refused).toMatchObject({ refused: { kind: 'folder-not-ours', found: ['letter.txt'] } })
    expectUntouched(folder, ['letter.txt'])
  })

  it('a file where the folder should be, and a folder under a file', () => {
    const file = path.join(freshFolder(), 'file')
    fs.writeFileSync(file, '')
    expect(openOnce(file)).toMatchObject({ refused: { kind: 'folder-is-a-file' } })
    expect(openOnce(path.join(file, 'data'))).toMatchObject({ refused: { kind: 'folder-is-a-file' } })
  })

  it('a database whose passwords are gone', () => {
    const folder = freshDataFolder()
    expect(openOnce(folder)).toMatchObject({ opened: folder })
    fs.rmSync(path.join(folder, 'database/passwords.json'))
    expect(openOnce(folder)).toMatchObject({ refused: { kind: 'passwords-missing' } })
  })

  it('a database that another version of PostgreSQL made', () => {
    const folder = freshDataFolder()
    expect(openOnce(folder)).toMatchObject({ opened: folder })
    fs.writeFileSync(path.join(folder, 'database/cluster/PG_VERSION'), '16\n')
    expect(openOnce(folder)).toMatchObject({ refused: { kind: 'cluster-of-another-version', made: '16' } })
  })
})

describe('which user it is', () => {
  it('an ordinary user runs the server themselves, and keeps the folder to themselves', () => {
    const parent = freshFolder()
    fs.chmodSync(parent, 0o777)
    const folder = path.join(parent, 'data')
    const environment = { KERFBOOK_DATA: folder, HOME: parent }
    const command = scriptCommand('open-once.ts')
    expect(asOrdinaryUser(command, environment)).toMatchObject([{ opened: folder }])
    expect(asOrdinaryUser(command, environment)).toMatchObject([{ opened: folder }])
    const { uid, mode } = fs.statSync(folder)
    expect(uid).not.toBe(0)
    expect(mode & 0o777).toBe(0o700)
    expect(fs.statSync(path.join(folder, 'database/cluster')).uid).toBe(uid)
    expect(fs.statSync(path.join(folder, 'database/passwords.json')).mode & 0o777).toBe(0o600)
  })

  it('a folder that this user may not write', () => {
    const folder = freshFolder()
    // As root the folder is another user's; else its mode alone closes it.
    fs.chmodSync(folder, 0o555)
    expect(asOrdinaryUser(scriptCommand('open-once.ts'), { KERFBOOK_DATA: folder })).toMatchObject([
      { refused: { kind: 'folder-not-permitted', folder } },
    ])
  })

  it('a user without a line in the passwd file', () => {
    const parent = freshFolder()
    fs.chmodSync(parent, 0o777)
    const lines = asNamelessUser(scriptCommand('open-once.ts'), { KERFBOOK_DATA: path.join(parent, 'data') })
    expect(lines).toMatchObject([{ refused: { kind: 'user-without-name', uid: 54321 } }])
    expect(lines[0]!['message']).toContain('DATABASE_URL')
  })

  it('a root that may become nobody else', () => {
    const command = ['unshare', '--user', '--map-root-user', ...scriptCommand('open-once.ts')]
    expect(linesOf(command, { KERFBOOK_DATA: path.join(freshFolder(), 'data') })).toMatchObject([
      { refused: { kind: 'user-not-changeable' } },
    ])
  })
})
