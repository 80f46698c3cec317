import { copyFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it, onTestFinished } from 'vitest'
import { readProgram } from '../../lib/core/program/read-program.ts'
import type { Instant } from '../../lib/core/calendar/instants.ts'
import { runOnDatabase } from '../../lib/cli/run.ts'
import type { Ran } from './command-line.ts'

const NOW = '2027-05-03T16:00:00.000Z' as Instant

let folder: string
let file: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'kerfbook-csv-'))
  file = join(folder, 'program.json')
  copyFileSync('seeds/demo.json', file)
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
})

async function fromCsv(sheet: string, ...words: string[]): Promise<Ran> {
  const path = join(folder, 'sheet.csv')
  writeFileSync(path, sheet)
  const ran = { code: -1, out: '', err: '' }
  const io = {
    out: (text: string) => void (ran.out += text),
    err: (text: string) => void (ran.err += text),
    now: () => NOW,
    ...{ debug: true, width: 100 },
  }
  ran.code = (await runOnDatabase(['from-csv', path, ...words, '--into', file], io)) ?? -1
  return ran
}

function programNow() {
  const read = readProgram(readFileSync(file, 'utf8'))
  if (!read.ok) throw new Error(JSON.stringify(read.problem))
  return read.value
}

const PEOPLE = 'Name,Organisation,Born on\nOttoline Varga,ashlar-range-staff,3 May 1991\n'

describe('from-csv', () => {
  it('[CL38] adds one entry with the rows of a sheet, by headings or by a map; the same sheet twice changes nothing', async () => {
    const before = programNow()
    const ran = await fromCsv(PEOPLE, '--as', 'people', '--by', 'Invented Typist')
    expect(ran).toMatchObject({ code: 0, err: '' })
    const after = programNow()
    expect(after.entries.length).toBe(before.entries.length + 1)
    expect(after.entries.at(-1)).toMatchObject({
      ...{
        actor: 'Invented Typist',
        event: 'brought in a sheet of people: 1 added, 0 changed',
        statedAt: NOW,
      },
    })
    const added = after.people.filter(({ recordedIn }) => recordedIn === after.entries.length)
    expect(added.map(({ name, birthDate }) => [name, birthDate])).toEqual([['Ottoline Varga', '1991-05-03']])

    const map = join(folder, 'map.json')
    const meant = { 2: { kind: 'person', person: added[0]!.id } }
    writeFileSync(
      map,
      JSON.stringify({ columns: { name: 'Name', 'membership.organisation': 'Organisation' }, meant }),
    )
    const twice = await fromCsv(PEOPLE, '--as', 'people', '--map', map)
    expect(twice.out).toContain('Nothing was brought in: all that')
    expect(programNow()).toEqual(after)
  })

  it('[CL38] tells rows that cannot be by row and column, and names that may mean somebody, and writes nothing', async () => {
    const before = readFileSync(file)
    const sheet =
      'Name,Organisation,Born on\nDana Whitlow,ashlar-range-staff,\nNew Invented,nowhere,31 April 2001\nOther Invented,ashlar-range-staff,\n'
    const ran = await fromCsv(sheet, '--as', 'people')
    expect(ran).toMatchObject({ code: 1, out: '' })
    expect(ran.err).toContain('row 3, Organisation: No organisation on record is called “nowhere”.')
    expect(ran.err).toContain('row 3, Born on: “31 April 2001”')
    expect(ran.err).toMatch(/row 2: “Dana Whitlow” may be .*p-dana-whitlow/)
    expect(readFileSync(file)).toEqual(before)
    const others = await fromCsv(sheet, '--as', 'people', '--leave-behind')
    expect(others).toMatchObject({ code: 0, err: '' })
    expect(programNow().people.filter(({ name }) => name === 'Other Invented')).toHaveLength(1)
  })

  it.each([
    ['no kind', [], 2, 'Say by --as what stands in it'],
    ['another kind', ['--as', 'saws'], 2, 'Say by --as what stands in it'],
    ['a map that is not there', ['--as', 'people', '--map', '/nowhere'], 1, '/nowhere'],
  ])('[CL38] %s is told in words', async (_, words, code, said) => {
    const ran = await fromCsv(PEOPLE, ...words)
    expect(ran).toMatchObject({ code, out: '' })
    expect(ran.err).toContain(said)
  })
})
