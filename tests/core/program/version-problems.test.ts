import { describe, expect, it } from 'vitest'
import type { ProgramProblem } from '../../../lib/core/program/problems.ts'
import {
  addVersion,
  all,
  example,
  fact,
  problemsOf,
  section,
  setIn,
  type Case,
  type Raw,
  type RawValue,
} from './small-program.ts'

const entry = (at: number, key: string, value: RawValue) => (file: Raw) => {
  section(file, 'entries')[at]![key] = value
}

const knowing: Case[] = [
  {
    name: 'an entry left out',
    break: (file) => section(file, 'entries').splice(3, 1),
    problems: [
      { path: 'entries[3].n', value: '5', kind: 'entry-number', expected: 4, found: 5 },
      ...['raises[0].recordedIn', 'suspensions[0].recordedIn', 'lifts[0].recordedIn'].map(
        (path) =>
          ({ path, value: '5', kind: 'no-such-entry', field: 'recordedIn', n: 5, entries: 4 }) as const,
      ),
    ],
  },
  {
    name: 'an entry stated before the one above it',
    break: entry(2, 'statedAt', '2026-03-09T17:29:59.999Z'),
    problems: [
      {
        path: 'entries[2].statedAt',
        value: '"2026-03-09T17:29:59.999Z"',
        kind: 'entry-earlier',
        statedAt: '2026-03-09T17:29:59.999Z',
        previous: '2026-03-09T17:30:00.000Z',
      } as unknown as ProgramProblem,
    ],
  },
  {
    name: 'a fact that ceases in an entry that does not exist',
    break: setIn('people', 'tomo', 'supersededIn', 6),
    problems: [
      {
        path: 'people[1].supersededIn',
        value: '6',
        kind: 'no-such-entry',
        field: 'supersededIn',
        n: 6,
        entries: 5,
      },
    ],
  },
  {
    name: 'a fact that ceases in the entry in which it became known',
    break: setIn('permissions', 'wren-guardian', 'supersededIn', 2),
    problems: [
      {
        path: 'permissions[0].supersededIn',
        value: '2',
        kind: 'superseded-too-early',
        recordedIn: 2,
        supersededIn: 2,
      },
    ],
  },
  {
    name: 'the same fact twice in one entry',
    break: addVersion('people', 'tomo', {}),
    problems: [
      { path: 'people[3]', value: '"tomo"', kind: 'twin', id: 'tomo', recordedIn: 2, other: 'people[1]' },
    ],
  },
  {
    name: 'two versions that count at once',
    break: addVersion('people', 'tomo', { recordedIn: 4 }),
    problems: [
      { path: 'people[3]', value: '"tomo"', kind: 'two-at-once', id: 'tomo', from: 4, other: 'people[1]' },
    ],
  },
  {
    name: 'two versions that count at once for one entry, long ago',
    break: all(
      addVersion('people', 'tomo', { recordedIn: 3 }),
      setIn('people', 'tomo', 'id', 'tomo'),
      (file) => {
        section(file, 'people')[1]!['supersededIn'] = 4
      },
    ),
    problems: [
      { path: 'people[3]', value: '"tomo"', kind: 'two-at-once', id: 'tomo', from: 3, other: 'people[1]' },
    ],
  },
  {
    name: 'two corrections of one version',
    break: all(setIn('certificates', 'tomo-cpr', 'supersededIn', 5), (file) => {
      const wrong = section(file, 'certificates').find((known) => known['id'] === 'tomo-cpr')
      section(file, 'certificates').push({ ...wrong, recordedIn: 5, supersedes: 2 })
      delete section(file, 'certificates').at(-1)!['supersededIn']
    }),
    problems: [
      {
        path: 'certificates[7].supersedes',
        value: '2',
        kind: 'two-heirs',
        id: 'tomo-cpr',
        supersedes: 2,
        other: 'certificates[3]',
      },
    ],
  },
  {
    name: 'versions that correct each other in a circle',
    break: (file) => {
      const certificate = fact(file, 'certificates', 'ines-cpr')
      Object.assign(certificate, { supersedes: 4, supersededIn: 4 })
      section(file, 'certificates').push({ ...certificate, recordedIn: 4, supersedes: 2, supersededIn: 5 })
    },
    problems: [
      {
        path: 'certificates[0].supersedes',
        value: '4',
        kind: 'supersession-circle',
        id: 'ines-cpr',
        entries: [2, 4],
      },
    ],
  },
  {
    name: 'a version that corrects itself',
    break: setIn('certificates', 'ines-cpr', 'supersedes', 2),
    problems: [
      {
        path: 'certificates[0].supersedes',
        value: '2',
        kind: 'supersession-circle',
        id: 'ines-cpr',
        entries: [2],
      },
    ],
  },
  {
    name: 'a correction of a version that is not in the file',
    break: setIn('certificates', 'tomo-cpr', 'supersedes', 3),
    problems: [
      {
        path: 'certificates[3].supersedes',
        value: '3',
        kind: 'supersedes-nothing',
        id: 'tomo-cpr',
        supersedes: 3,
        versions: [2],
      },
    ],
  },
  {
    name: 'a correction that leaves the version open that it corrects',
    break: (file) => delete section(file, 'certificates')[2]!['supersededIn'],
    problems: [
      {
        path: 'certificates[3].supersedes',
        value: '2',
        kind: 'heir-in-another-entry',
        id: 'tomo-cpr',
        recordedIn: 4,
        other: 'certificates[2]',
      },
    ],
  },
  {
    name: 'a correction recorded after the version it corrects had ceased',
    break: (file) => (section(file, 'certificates')[2]!['supersededIn'] = 3),
    problems: [
      {
        path: 'certificates[3].supersedes',
        value: '2',
        kind: 'heir-in-another-entry',
        id: 'tomo-cpr',
        recordedIn: 4,
        supersededIn: 3,
        other: 'certificates[2]',
      },
    ],
  },
  {
    name: 'a certificate that changes its person',
    break: setIn('certificates', 'tomo-cpr', 'person', 'wren'),
    problems: [
      {
        path: 'certificates[3].person',
        value: '"wren"',
        kind: 'anchor-changed',
        id: 'tomo-cpr',
        field: 'person',
        before: 'tomo',
        now: 'wren',
        other: 'certificates[2]',
      },
    ],
  },
  {
    name: 'a card that changes its number',
    break: all(
      setIn('cards', 'tomo-card', 'supersededIn', 4),
      addVersion('cards', 'tomo-card', { recordedIn: 4, supersedes: 2, number: 'FH-020', supersededIn: 5 }),
    ),
    problems: [
      {
        path: 'cards[4].number',
        value: '"FH-020"',
        kind: 'anchor-changed',
        id: 'tomo-card',
        field: 'number',
        before: 'FH-002',
        now: 'FH-020',
        other: 'cards[2]',
      },
    ],
  },
  {
    name: 'one number for two people',
    break: all(
      setIn('cards', 'wren-old-card', 'number', 'FH-002'),
      setIn('cards', 'wren-old-card', 'line', 2),
    ),
    problems: [
      {
        path: 'cards[3].number',
        value: '"FH-002"',
        kind: 'number-of-two-people',
        number: 'FH-002',
        person: 'wren',
        otherPerson: 'tomo',
        other: 'cards[2]',
      },
    ],
  },
  {
    name: 'one line for two cards',
    break: setIn('cards', 'ines-felling', 'line', 1),
    problems: [
      {
        path: 'cards[1].line',
        value: '1',
        kind: 'line-of-two-cards',
        number: 'FH-001',
        line: 1,
        otherCard: 'ines-bucking',
        other: 'cards[0]',
      },
    ],
  },
  {
    name: 'an item and expected work of one id',
    break: all(setIn('expectedWork', 'kettle-rest', 'id', 'kettle-log-1'), (file) => {
      fact(file, 'assignments', 'wren-learns')['items'] = ['kettle-log-1']
    }),
    problems: [
      {
        path: 'expectedWork[0].id',
        value: '"kettle-log-1"',
        kind: 'id-in-two-sections',
        id: 'kettle-log-1',
        other: 'items[0]',
      },
    ],
  },
]

describe('entries and versions', () => {
  it.each(knowing)('[PR8] $name', ({ break: change, problems }) => {
    const file = example()
    change(file)
    expect(new Set(problemsOf(file))).toEqual(new Set(problems))
  })

  it('[PR9] a fact may cease to be known without an heir, and be recorded again later', () => {
    const file = example()
    all(
      setIn('raises', 'kettle-log-1-raised', 'recordedIn', 3),
      setIn('raises', 'kettle-log-1-raised', 'supersededIn', 4),
    )(file)
    expect(problemsOf(file)).toEqual([])
    addVersion('raises', 'kettle-log-1-raised', { recordedIn: 5, supersededIn: undefined })(file)
    expect(problemsOf(file)).toEqual([])
  })

  it('[PR9] a fact that was corrected in another section has the same id there without harm', () => {
    const file = example()
    section(file, 'organisations').push({ id: 'tomo', recordedIn: 2, name: 'Tomo and daughters (invented)' })
    expect(problemsOf(file)).toEqual([])
  })
})
