import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readInches } from '../../lib/wording/read-inches.ts'
import { readInstant } from '../../lib/core/calendar/instants.ts'
import { writeInches, type Inches } from '../../lib/core/kernel/measures.ts'
import { RUNS } from '../property-runs.ts'
import { answered, DEMO, DEMO_DAY, FELLING, fileWith, refusedWith, runLine } from './command-line.ts'

describe('diameters', () => {
  it.each([
    ['22', 22],
    ['22.5', 22.5],
    ['22 1/2', 22.5],
    ['24 1/16', 24.0625],
    ['1/2', 0.5],
    ['0.0625', 0.0625],
    ['22in', 22],
    ['22 1/2 in', 22.5],
    ['22"', 22],
    [' 22 ', 22],
    ['22  3/4', 22.75],
    ['400', 400],
    ['6/4', 1.5],
  ])('[CL8] %s is read', (text, inches) => {
    expect(readInches(text)).toEqual({ ok: true, value: inches })
  })

  it.each([
    ['22.3', '22 1/4 and 22 5/16'],
    ['1/3', '5/16 and 3/8'],
    ['0.01', 'nearest to this: 1/16'],
    ['0', 'above 0'],
    ['0/4', 'above 0'],
    ['400 1/16', 'at most 400'],
    ['999999', 'at most 400'],
    ['-3', 'written'],
    ['', 'written'],
    ['1e3', 'written'],
    ['22,5', 'written'],
    ['twenty', 'written'],
    ['1/0', 'fraction'],
    ['22.5 1/2', 'fraction'],
    ['221/2x', 'written'],
    ['Infinity', 'written'],
    ['22 cm', 'written'],
    ['9'.repeat(1000), 'written'],
  ])('[CL8] %s is refused in words', (text, words) => {
    const read = readInches(text)
    expect(read.ok).toBe(false)
    expect(!read.ok && read.problem).toContain(words)
  })

  it('[CL8] reads back every sixteenth that is written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6400 }), (sixteenths) => {
        const inches = (sixteenths / 16) as Inches
        expect(readInches(writeInches(inches))).toEqual({ ok: true, value: inches })
        expect(readInches(String(inches))).toEqual({ ok: true, value: inches })
      }),
      { numRuns: RUNS },
    )
  })
})

/** The question with one option said otherwise. */
function withOption(name: string, value: string): string[] {
  const words: string[] = [...FELLING]
  words[words.indexOf(name) + 1] = value
  return words
}

describe('words and days', () => {
  it.each([
    ['--work', 'feling', 'Is felling meant?'],
    ['--work', 'limbing', 'bucking or felling'],
    ['--complexity', 'moderatly', 'Is moderate meant?'],
    ['--diameter', '22.3', '22 1/4 and 22 5/16'],
    ['--from', '2027-02-30', 'no such day'],
    ['--from', '0000-01-01', '1900 to 2199'],
    ['--through', '9999-12-31', '1900 to 2199'],
    ['--through', '15 July', 'YYYY-MM-DD'],
    ['--through', '2027-07-07', 'lies before'],
    ['--today', 'yesterday', 'YYYY-MM-DD'],
  ])('[CL9] %s %s is misuse', (name, value, said) => {
    expect(refusedWith(2, 'ask', DEMO, ...withOption(name, value))).toContain(said)
  })

  it('[CL9] a saw that the book does not know is answered, and one that nobody knows is misuse', () => {
    expect(answered('ask', DEMO, ...FELLING, '--saw', 'chain-saw')).toContain('0  on their own')
    expect(refusedWith(2, 'ask', DEMO, ...FELLING, '--saw', 'bow')).toContain('crosscut or chain-saw')
    expect(refusedWith(2, 'matrix', DEMO, '--saw', 'bow')).toContain('crosscut or chain-saw')
  })
})

describe('as known at', () => {
  const lukasz = ['--person', 'p-lukasz-wrzos']
  it.each([
    ['60', 'As known at entry 60 '],
    ['2027-04-14T16:39:59Z', 'As known at entry 60 '],
    ['2027-04-14T16:40:00Z', 'As known at entry 61 '],
    ['2027-04-13', 'As known at entry 60 '],
    ['2027-04-14', 'As known at entry 61 '],
    ['2150-01-01', 'As known at entry 76 '],
    ['2027-04-14', '14 April 2027, 16:40 UTC, which is 10:40 in America/Denver'],
  ])('[CL10] %s', (moment, said) => {
    expect(answered('ask', DEMO, ...FELLING, ...lukasz, '--known-at', moment)).toContain(said)
  })

  it('[CL10] what was known then decides: a correction entered later changes nothing before', () => {
    expect(answered('ask', DEMO, ...FELLING, ...lukasz, '--known-at', '60')).toContain('On their own: 1')
    expect(answered('ask', DEMO, ...FELLING, ...lukasz, '--known-at', '61')).toContain('No, and why: 1')
  })

  it.each([
    [1, '0', 'entries 1 to 76'],
    [1, '77', 'entries 1 to 76'],
    [1, '2020-01-01', 'As known on 1 January 2020 in America/Denver, nothing was on record'],
    [1, '2020-01-01T00:00:00Z', 'nothing was on record'],
    [2, 'noon', 'a moment in UTC or a day'],
    [2, '2027-04-14T16:40', 'in UTC'],
    [2, '2027-04-14T16:00:00', 'ends with Z: 2027-04-14T16:00:00Z.'],
    [2, '-5', 'wants a value'],
  ] as const)('[CL10] refused with %s: %s', (code, moment, said) => {
    expect(refusedWith(code, 'ask', DEMO, ...FELLING, '--known-at', moment)).toContain(said)
  })
})

describe('today', () => {
  it.each([
    ['2027-05-04T05:59:00Z', 'Today is 3 May 2027.'],
    ['2027-05-04T06:00:00Z', 'Today is 4 May 2027.'],
  ])('[CL11] at %s: %s', (now, said) => {
    const words = ['ask', DEMO, ...FELLING.slice(0, -DEMO_DAY.length), '--person', 'p-lukasz-wrzos']
    expect(runLine(words, { now: readInstant(now)! }).out).toContain(said)
  })
})

describe('items', () => {
  const item = ['--item', 'i-c-02-log-1']
  it('[CL12] bring their work and their days', () => {
    const out = answered('ask', DEMO, ...item, ...DEMO_DAY)
    expect(out).toContain('buck a log (Class log 1), 12 in across')
    expect(out).toContain('from 27 to 28 May 2027, at Rough Gate')
  })

  it('[CL12] the days asked are cut to theirs', () => {
    expect(answered('ask', DEMO, ...item, '--from', '2027-05-28', '--through', '2027-06-20')).toContain(
      'on 28 May 2027, at',
    )
    expect(answered('ask', DEMO, '--item', 'Jam at the ford', '--through', '2027-06-28')).toContain(
      'on 28 June 2027, at',
    )
  })

  it('[CL12] no common day is refused with the days of the item', () => {
    const err = refusedWith(1, 'ask', DEMO, ...item, '--from', '2027-08-01', '--through', '2027-08-03')
    expect(err).toContain('no day in common')
    expect(err).toContain('27 to 28 May 2027')
  })

  it('[CL12] what an item says is not said again', () => {
    const err = refusedWith(2, 'ask', DEMO, ...item, '--work', 'felling', '--diameter', '3')
    expect(err).toContain('--item says --work and --diameter already')
    expect(refusedWith(2, 'ask', DEMO, ...item, '--place', 'x')).toContain(
      '--item says --place already, so it is not given',
    )
  })
})

describe('names', () => {
  it.each([
    ['an id', ['--person', 'p-lukasz-wrzos'], 'May Łukasz Wrzos fell'],
    ['an exact name', ['--person', 'Łukasz Wrzos'], 'May Łukasz Wrzos fell'],
    ['a place by id', ['--place', 'sable-lake'], 'at Sable Lake?'],
    ['a place by name', ['--place', 'Sable Lake'], 'at Sable Lake?'],
  ])('[CL13] %s', (_title, words, said) => {
    expect(answered('ask', DEMO, ...FELLING, ...words)).toContain(said)
  })

  it.each([
    ['a shared name', ['--person', 'Dana Whitlow'], 'p-dana-whitlow or p-dana-whitlow-2'],
    ['a mistyped name', ['--person', 'Lukasz Wrzos'], 'Is “Łukasz Wrzos” meant?'],
    ['a mistyped id', ['--person', 'p-lukas-wrzos'], 'Is “p-lukasz-wrzos” meant?'],
    ['a part of a name', ['--person', 'WRZOS'], 'Is “p-lukasz-wrzos” meant?'],
    [
      'a part of several',
      ['--person', 'dana'],
      'p-dana-whitlow (Dana Whitlow) or p-dana-whitlow-2 (Dana Whitlow)?',
    ],
    ['nobody', ['--person', 'zzzzzzzzzzzz'], 'No person on record'],
    ['a mistyped place', ['--place', 'sable-lace'], 'Is “sable-lake” meant?'],
    ['somebody in the company', ['--company', 'p-wulandari,p-nobody-here-at-all'], 'No person on record'],
    ['somebody twice', ['--company', 'p-wulandari,Wulandari'], 'names Wulandari twice'],
    ['a name of a million letters', ['--person', 'x'.repeat(100_000)], 'No person on record'],
  ])('[CL13] %s is refused', (_title, words, said) => {
    expect(refusedWith(1, 'ask', DEMO, ...FELLING, ...words)).toContain(said)
  })

  it('[CL13] a name that reads like another’s names nobody', () => {
    const file = JSON.parse(readFileSync(DEMO, 'utf8')) as { people: { id: string; name: string }[] }
    const wrzos = file.people.find(({ id }) => id === 'p-lukasz-wrzos')!
    const other = file.people.find(({ id }) => id !== 'p-lukasz-wrzos')!
    other.name = wrzos.name.toUpperCase().replace(' ', '  ')
    const path = fileWith(JSON.stringify(file))
    for (const name of [wrzos.name, other.name])
      expect(refusedWith(1, 'ask', path, ...FELLING, '--person', name)).toMatch(
        new RegExp(`Several are called .*(${other.id} or ${wrzos.id}|${wrzos.id} or ${other.id})`),
      )
  })

  it('[CL13] an item that is not on record', () => {
    expect(refusedWith(1, 'ask', DEMO, '--item', 'i-c-02-log-9')).toContain('Is “i-c-02-log-1” meant?')
    expect(refusedWith(1, 'ask', DEMO, '--item', 'zzzzzzzz')).toContain('The command matrix lists items.')
  })

  it('[CL13] a work list is no item, and says what it holds', () => {
    const err = refusedWith(1, 'ask', DEMO, '--item', 'h-11')
    expect(err).toContain('“h-11” is a work list')
    expect(err).toContain('x-h-11-')
  })
})
