import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest'
import type { Program } from '../../lib/core/program/program.schema.ts'
import { readProgram } from '../../lib/core/program/read-program.ts'
import { openStore, type Store } from '../../lib/store/client.ts'
import { snapshotOf } from '../../lib/store/snapshot.ts'
import { openRuntime } from '../../lib/usecases/door/open-runtime.ts'
import { readEntry } from '../../lib/usecases/journal/read-entry.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { callerAs } from '../builders/call-any.ts'
import { cloneDatabase, type TestDatabase } from '../builders/test-database.ts'
import { openDemoRuntime } from '../builders/test-runtime.ts'
import { pastProgramText } from '../start-up/past-program.ts'
import { answered, DEMO, fileWith } from './command-line.ts'
import { runLater } from './database-line.ts'

const SEEDS = fileURLToPath(new URL('../../seeds', import.meta.url))

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kerfbook-bring-in-'))
  vi.stubEnv('KERFBOOK_DATA', folder)
})
afterEach(() => {
  vi.unstubAllEnvs()
  rmSync(folder, { recursive: true, force: true })
})

async function openDemo() {
  const opened = await openDemoRuntime()
  onTestFinished(() => opened.close())
  vi.stubEnv('DATABASE_URL', opened.database.appUrl)
  return opened
}

/** A database without entries, of which nothing is open. */
async function emptyDatabase(): Promise<TestDatabase> {
  const database = await cloneDatabase()
  onTestFinished(() => database.drop())
  vi.stubEnv('DATABASE_URL', database.appUrl)
  return database
}

async function inStore<Value>(database: TestDatabase, look: (store: Store) => Promise<Value>) {
  const store = openStore(database.appUrl)
  try {
    return await look(store)
  } finally {
    await store.close()
  }
}

const changedDemo = (edit: (program: Program) => void): string => {
  const program = JSON.parse(readFileSync(DEMO, 'utf8')) as Program
  edit(program)
  return fileWith(JSON.stringify(program), 'changed.json')
}

describe('bring-in', () => {
  it('[CL33] brings in what is new as one entry, which says that it came from the command line; then nothing', async () => {
    const { runtime } = await openDemo()
    const file = changedDemo((program) => {
      program.people.push({ id: 'p-newly-come', name: 'Newly Come', recordedIn: 76 })
    })
    const ran = await runLater('bring-in', file)
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(ran.out).toMatch(
      /^Brought in \S+changed\.json: 1 fact in 1 entry\. \d+ facts said the same already\.\n$/,
    )
    expect(readFileSync(join(folder, 'heads.log'), 'utf8')).toMatch(/^78 [0-9a-f]{64} /)

    const { n, commands } = await snapshotOf(runtime.store)
    expect(n).toBe(78)
    expect(commands.get(78)).toEqual({ event: 'program-file-brought-in' })
    const manager = callerAs('marit', [{ role: 'program-manager' }])
    const entry = await callQuery(runtime, readEntry, { input: { n: 78 } }, manager)
    expect(JSON.stringify(entry)).toContain('brought in 1 fact of a program file, from the command line')

    const again = await runLater('bring-in', file)
    expect(again).toMatchObject({ code: 0, err: '' })
    expect(again.out).toMatch(/^Nothing was brought in: all \d+ facts of \S+changed\.json are on record\.\n$/)
    expect((await snapshotOf(runtime.store)).n).toBe(78)
  })

  it('[CL33] brings a file into an empty database with its history, which is then no demonstration', async () => {
    const database = await emptyDatabase()
    // As a start leaves it that was broken off before it loaded anything.
    const broken = await openRuntime({ url: database.appUrl, seeds: SEEDS, begin: 'as-before' })
    expect(broken.demo).toBe(true)
    await broken.store.close()

    const ran = await runLater('bring-in', fileWith(pastProgramText()))
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(ran.out).toMatch(/^Brought in \S+: \d+ facts in 5 entries\.\n$/)
    const runtime = await openRuntime({ url: database.appUrl, seeds: SEEDS, begin: 'as-before' })
    const { n, program } = await snapshotOf(runtime.store)
    const { demo, demoAccounts } = runtime
    await runtime.store.close()
    expect({ demo, demoAccounts, n, name: program.program.name }).toEqual({
      ...{ demo: false, demoAccounts: [], n: 5, name: 'Fernhollow Trail Saws (invented example)' },
    })
  })

  it('[CL33] refuses a file with all that is wrong in it, another program and what is no file, and writes nothing', async () => {
    const { runtime } = await openDemo()
    const faulty = changedDemo((program) => {
      Object.assign(program.people[0]!, { name: '' })
      Object.assign(program.cards[0]!, { effectiveDay: '2027-02-30' })
    })
    const ran = await runLater('bring-in', faulty)
    expect(ran).toMatchObject({ code: 1, out: '' })
    const [first, ...problems] = ran.err.trimEnd().split('\n')
    expect(first).toBe(`${faulty} is refused, and nothing was brought in:`)
    expect(problems).toHaveLength(2)
    expect(problems[0]).toContain('  people[0].name: "": ')
    expect(problems[1]).toContain('  cards[0].effectiveDay: "2027-02-30": ')

    const other = changedDemo((program) => void Object.assign(program.program, { id: 'another-range' }))
    expect(await runLater('bring-in', other)).toMatchObject({
      ...{ code: 1, out: '' },
      err: 'This database holds the program ashlar-range, and the file is of the program another-range. Nothing was brought in.\n',
    })
    const elsewhere = changedDemo((program) => void Object.assign(program.program, { timeZone: 'UTC' }))
    expect((await runLater('bring-in', elsewhere)).err).toMatch(
      /^The file says otherwise than this database in which time zone its days begin\. .*nothing was brought in\./,
    )
    expect(await runLater('bring-in', join(folder, 'nowhere.json'))).toMatchObject({ code: 1, out: '' })
    expect((await snapshotOf(runtime.store)).n).toBe(77)
  })

  it.each([[[]], [['a.json', 'b.json']], [['a.json', '--into', 'b.json']]])(
    '[CL33] %j is misuse',
    async (words) => {
      const ran = await runLater('bring-in', ...words)
      expect(ran).toMatchObject({ code: 2, out: '' })
      expect(ran.err).toContain('bring-in --help')
    },
  )
})

describe('take-out', () => {
  it('[CL34] gives the program of the database as a file that is good, and the access log counts whom it holds', async () => {
    const { runtime } = await openDemo()
    const ran = await runLater('take-out')
    expect(ran).toMatchObject({ code: 0, err: '' })
    const read = readProgram(ran.out)
    if (!read.ok) throw new Error(JSON.stringify(read.problem.slice(0, 3)))
    const demo = JSON.parse(readFileSync(DEMO, 'utf8')) as Program
    expect(read.value.entries).toHaveLength(77)
    expect(read.value.program).toEqual(demo.program)
    expect(read.value.cards).toHaveLength(demo.cards.length)
    const [line] = await runtime.store.prisma.accessLog.findMany({ where: { useCase: 'program/take-out' } })
    expect(line).toMatchObject({ outcome: 'looked', accountId: null, count: 59 })
  })

  it('[CL34] writes it into a file for nobody else to read, says the head, and overwrites nothing', async () => {
    const { runtime } = await openDemo()
    const path = join(folder, 'taken.json')
    const ran = await runLater('take-out', '--into', path)
    const { head } = await snapshotOf(runtime.store)
    expect(ran).toEqual({
      ...{ code: 0, err: '' },
      out: `Taken out into ${path}: 77 entries, 689 facts, 59 people.\nThe head of the journal is 77:${head!.hash}\n`,
    })
    expect(statSync(path).mode & 0o777).toBe(0o600)
    expect(answered('check', path)).toContain('no problems')
    const taken = readFileSync(path, 'utf8')

    expect(await runLater('take-out', '--into', path)).toEqual({
      ...{ code: 1, out: '' },
      err: `${path} was not written: something is there already, and nothing is written over it.\n`,
    })
    expect(readFileSync(path, 'utf8')).toBe(taken)
    const nowhere = join(folder, 'no-folder', 'taken.json')
    expect(await runLater('take-out', '--into', nowhere)).toEqual({
      ...{ code: 1, out: '' },
      err: `${nowhere} was not written: there is no such folder.\n`,
    })
    expect(existsSync(nowhere)).toBe(false)
  })

  it('[CL34] what is taken out comes in elsewhere with its history, and is the same when it is taken out there', async () => {
    await emptyDatabase()
    await runLater('bring-in', fileWith(pastProgramText()))
    const { out } = await runLater('take-out')
    const second = await emptyDatabase()
    expect(await runLater('bring-in', fileWith(out))).toMatchObject({ code: 0 })
    expect((await runLater('take-out')).out).toBe(out)
    expect(await inStore(second, async (store) => (await snapshotOf(store)).n)).toBe(5)
  })

  it('[CL34] refuses a database without a program, and a word that it does not know', async () => {
    await emptyDatabase()
    expect(await runLater('take-out')).toMatchObject({
      ...{ code: 1, out: '' },
      err: 'This database has no program yet. Open the link that was printed at the start.\n',
    })
    expect(await runLater('take-out', 'program.json')).toMatchObject({ code: 2, out: '' })
  })
})
