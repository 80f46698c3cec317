import { describe, expect, it } from 'vitest'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import { readInstant } from '../../lib/core/calendar/instants.ts'
import type {
  JsonExpected,
  JsonType,
  ProblemFigures,
  ProblemKind,
  ProgramProblem,
  ReferenceTo,
} from '../../lib/core/program/problems.ts'
import { jsonExpectedWords, jsonTypeWords, referenceWords } from '../../lib/wording/problem-words.ts'
import { problemLine, problemSentence } from '../../lib/wording/problems.ts'
import { expectSays } from './sentence-checks.ts'

type Sample<Kind extends ProblemKind> = [Omit<Extract<ProblemFigures, { kind: Kind }>, 'kind'>, ...string[]]

const first = dateOf('2027-07-08')
const last = dateOf('2027-07-11')
const moment = readInstant('2027-04-14T16:40:00Z')!
const earlier = readInstant('2027-04-13T08:05:00Z')!

/** At least one sample of every kind: a kind without one does not compile. */
const PROBLEMS: { [Kind in ProblemKind]: [Sample<Kind>, ...Sample<Kind>[]] } = {
  'too-large': [[{ mostBytes: 67_108_864 }, '67,108,864']],
  'not-text': [[{ line: 3, column: 7 }, 'line 3', 'column 7']],
  'empty-text': [[{}, 'empty']],
  'not-json': [[{ expected: 'colon', line: 3, column: 7 }, 'line 3', 'column 7', 'colon']],
  'nested-too-deep': [[{ most: 64 }, '64']],
  'forbidden-key': [[{ key: '__proto__' }, '__proto__']],
  'duplicate-key': [[{ key: 'name' }, 'name', 'twice']],
  'too-many-values': [[{ most: 4_000_000 }, '4,000,000', 'values']],
  'format-unknown': [[{ expected: 'kerfbook-program/1' }, 'kerfbook-program/1']],
  'unknown-key': [
    [{ key: 'poeple', nearest: 'people' }, 'poeple', '“people” meant'],
    [{ key: 'zzz' }, 'zzz'],
  ],
  'missing-key': [[{ key: 'name' }, 'name']],
  'wrong-type': [[{ expected: 'list', found: 'text' }, 'a list', 'a text']],
  'not-one-of': [
    [{ allowed: ['bucking', 'felling'], nearest: 'felling' }, 'bucking or felling', '“felling” meant'],
  ],
  'text-empty': [[{}, 'empty']],
  'text-too-long': [[{ most: 200, letters: 1_000_000 }, '200', '1,000,000']],
  'badly-written': [
    [{ form: 'id' }, 'id'],
    [{ form: 'level' }, 'level'],
    [{ form: 'rule-id' }, 'rule id'],
    [{ form: 'name' }, 'name'],
    [{ form: 'card-number' }, 'card number'],
    [{ form: 'text' }, 'text'],
    [{ form: 'other' }, 'written'],
  ],
  'hidden-character': [
    [{ code: 'U+200B', at: 4 }, 'Letter 4', 'a zero-width space (U+200B)', 'nobody sees'],
    [{ code: 'U+E0041', at: 1 }, 'Letter 1', 'a character (U+E0041)'],
  ],
  'number-too-large': [[{}, 'too large']],
  'number-outside': [
    [{ least: 1, most: 99, exclusive: false }, 'at least 1', 'at most 99'],
    [{ least: 0, exclusive: true }, 'more than 0'],
    [{ most: 400, exclusive: true }, 'less than 400'],
  ],
  'too-few': [[{ least: 1 }, '1']],
  'too-many': [[{ most: 40, count: 41 }, '40', '41']],
  'not-a-day': [[{}, 'YYYY-MM-DD']],
  'no-such-day': [[{}, 'no such day']],
  'year-outside': [[{ first: 1900, last: 2199 }, '1900', '2199']],
  'not-an-instant': [[{}, 'UTC']],
  'not-a-sixteenth': [[{}, '1/16']],
  'time-zone-unknown': [[{}, 'time zone']],
  'last-day-not-administrative': [[{}, 'administrative']],
  'last-day-not-given': [[{}, 'permission given', 'anew']],
  'otherwise-refused': [[{ says: 'too odd' }, 'too odd']],
  'span-backwards': [
    [
      { firstField: 'firstDay', lastField: 'lastDay', firstDay: last, lastDay: first },
      'firstDay',
      '11 July 2027',
      'lastDay',
      '8 July 2027',
    ],
  ],
  'range-backwards': [[{ leastField: 'least', mostField: 'most', least: 5, most: 3 }, '5', '3']],
  'repeated-in-list': [
    [
      { what: 'restriction', id: 'r-1', other: 'cards[0].restrictions[0]' },
      'r-1',
      'cards[0].restrictions[0]',
    ],
  ],
  'edition-fault': [[{ fault: { kind: 'twin-rule', rule: 'grant.bucking.A' } }, 'grant.bucking.A']],
  'of-age-contradicts-birth': [
    [
      { birthDate: dateOf('2010-10-03'), ofAgeFrom: first, reached: dateOf('2028-10-03') },
      '3 October 2010',
      '8 July 2027',
      '3 October 2028',
    ],
  ],
  'born-after-last-entry': [[{ birthDate: last, lastEntry: first }, '11 July 2027', '8 July 2027']],
  'carried-in-from-here': [[{ effectiveDay: first, firstDayOfDeciding: first }, 'itself', '8 July 2027']],
  'card-without-decision': [
    [{ effectiveDay: last, firstDayOfDeciding: first }, '11 July 2027', '8 July 2027'],
  ],
  'entry-number': [[{ expected: 3, found: 5 }, '3', '5']],
  'entry-earlier': [
    [{ statedAt: earlier, previous: moment }, '13 April 2027, 08:05', '14 April 2027, 16:40'],
  ],
  'no-such-entry': [
    [{ field: 'recordedIn', n: 9, entries: 4 }, 'recordedIn', '9', '1 to 4'],
    [{ field: 'supersededIn', n: 9, entries: 1 }, 'one entry'],
    [{ field: 'supersededIn', n: 9, entries: 0 }, 'no entries'],
  ],
  'superseded-too-early': [[{ recordedIn: 5, supersededIn: 4 }, '5', '4']],
  twin: [[{ id: 'p-1', recordedIn: 3, other: 'people[0]' }, 'p-1', '3', 'people[0]']],
  'two-at-once': [[{ id: 'p-1', from: 3, other: 'people[0]' }, 'p-1', '3', 'people[0]']],
  'two-heirs': [[{ id: 'p-1', supersedes: 3, other: 'people[0]' }, 'p-1', '3', 'people[0]']],
  'supersession-circle': [[{ id: 'p-1', entries: [3, 4] }, 'p-1', '3 and 4', 'circle']],
  'supersedes-nothing': [
    [{ id: 'p-1', supersedes: 3, versions: [1, 2] }, 'p-1', '3', '1 and 2'],
    [{ id: 'p-1', supersedes: 3, versions: [1] }, 'entry 1'],
    [{ id: 'p-1', supersedes: 3, versions: [] }, 'No version'],
  ],
  'heir-in-another-entry': [
    [{ id: 'p-1', recordedIn: 5, supersededIn: 4, other: 'people[0]' }, '5', '4', 'people[0]'],
    [{ id: 'p-1', recordedIn: 5, other: 'people[0]' }, 'not superseded'],
  ],
  'anchor-changed': [
    [
      { id: 'c-1', field: 'person', before: 'p-1', now: 'p-2', other: 'cards[0]' },
      'person',
      'p-1',
      'p-2',
      'cards[0]',
    ],
  ],
  'number-of-two-people': [
    [
      { number: 'K-1', person: 'p-1', otherPerson: 'p-2', other: 'cards[0]' },
      'K-1',
      'p-1',
      'p-2',
      'cards[0]',
    ],
  ],
  'two-crews': [
    [
      { person: 'p-1', firstDay: first, lastDay: first, other: 'placements[0]' },
      'p-1',
      '8 July 2027',
      'placements[0]',
    ],
  ],
  'joined-to-itself': [[{ person: 'p-1' }, 'itself']],
  'joined-twice': [[{ person: 'p-1', other: 'joins[0]' }, 'p-1', 'joins[0]']],
  'joined-through': [[{ stays: 'p-1', other: 'joins[0]' }, 'p-1', 'joins[0]']],
  'joined-of-two-births': [[{ person: 'p-1', stays: 'p-2' }, 'p-1', 'p-2', 'birth dates']],
  'line-of-two-cards': [
    [{ number: 'K-1', line: 2, otherCard: 'c-2', other: 'cards[0]' }, 'K-1', '2', 'c-2', 'cards[0]'],
  ],
  'id-in-two-sections': [[{ id: 'log-1', other: 'items[0]' }, 'log-1', 'items[0]']],
  'refers-to-nothing': [
    [{ to: 'people', id: 'p-9', nearest: 'p-1' }, 'person', 'p-9', '“p-1” meant'],
    [{ to: 'card-numbers', id: 'K-9' }, 'card number', 'K-9'],
  ],
  'refers-to-later': [[{ to: 'cards', id: 'c-1', recordedIn: 3, knownFrom: 5 }, 'card', 'c-1', '3', '5']],
  'not-a-unit': [[{ id: 'north-end', found: 'place' }, 'north-end', 'place']],
  'restriction-not-words': [[{ restriction: 'r-1' }, 'r-1']],
  'extension-of-another-book': [[{ book: 'b-1', card: 'c-1', cardBook: 'b-2' }, 'b-1', 'c-1', 'b-2']],
  'place-withdrawn-under': [[{ place: 'ford', knownAt: 7 }, 'ford', '7']],
  'place-books-overlap': [[{ books: ['one', 'two'], first, last }, 'one', 'two', '8']],
  'lift-before-suspension': [[{ day: first, firstDay: last }, '8 July 2027', '11 July 2027']],
  'places-circle': [[{ places: ['a', 'b'], knownAt: 3 }, 'a and b', '3']],
  'places-too-deep': [[{ most: 8, knownAt: 3 }, '8', '3']],
  'place-misplaced': [
    [{ place: 'unit', under: 'place' }, 'unit', 'place'],
    [{ place: 'place', under: 'nothing' }, 'nothing'],
  ],
  'no-root-place': [[{ knownAt: 3 }, '3', 'program']],
  'two-root-places': [[{ places: ['a', 'b'], knownAt: 3 }, 'a and b', '3']],
  'book-without-edition': [[{ book: 'b-1' }, 'b-1']],
  'editions-gap': [
    [{ book: 'b-1', first, last, knownAt: 3 }, 'b-1', '8 to 11 July 2027', '3'],
    [{ book: 'b-1', first, last: first }, '8 July 2027.'],
  ],
  'editions-overlap': [
    [{ book: 'b-1', editions: ['e-1', 'e-2'], first, last, knownAt: 3 }, 'e-1 and e-2', '8 to 11 July 2027'],
    [{ book: 'b-1', editions: ['e-1', 'e-2'], first }, 'from 8 July 2027 on.'],
  ],
  'more-problems': [
    [{ count: 1 }, 'One more'],
    [{ count: 12_345 }, '12,345'],
  ],
}

const problems = Object.entries(PROBLEMS).flatMap(([kind, ofKind]) =>
  ofKind.map(([figures, ...words]) => ({
    kind,
    words,
    problem: { kind, path: 'people[0]', ...figures } as unknown as ProgramProblem,
  })),
)

describe('problems of a file', () => {
  it.each(problems)('[WO4] [WO8] $kind says $words', ({ problem, words }) => {
    expectSays(problemSentence(problem), ...words)
  })

  it('[WO4] a line is path, value and sentence; what is not there leaves no hole', () => {
    expect(problemLine({ path: 'people[3].name', value: '""', kind: 'text-empty' })).toBe(
      'people[3].name: "": The text is empty.',
    )
    expect(problemLine({ path: 'people[3].name', kind: 'text-empty' })).toBe(
      'people[3].name: The text is empty.',
    )
    expect(problemLine({ path: '', kind: 'empty-text' })).toBe('The file is empty.')
  })

  it('[WO4] every type, every thing that JSON wants and every kind of reference has its words', () => {
    const words = [
      ...Object.values(jsonTypeWords satisfies Record<JsonType, string>),
      ...Object.values(jsonExpectedWords satisfies Record<JsonExpected, string>),
      ...Object.values(referenceWords satisfies Record<ReferenceTo, string>),
    ]
    for (const word of words) expect(word).toMatch(/^[a-z]/)
  })
})
