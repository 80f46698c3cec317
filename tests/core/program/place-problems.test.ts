import { describe, expect, it } from 'vitest'
import { example, fact, problem, problemsOf, section, setIn, type Case, type Raw } from './small-program.ts'

const trees: Case[] = [
  {
    name: 'two places in each other',
    break: (file) => {
      section(file, 'places').push({
        ...fact(file, 'places', 'kettle-trail'),
        id: 'ford',
        parent: 'kettle-trail',
      })
      fact(file, 'places', 'kettle-trail')['parent'] = 'ford'
    },
    problems: [
      problem('places[1].parent', '"ford"', {
        kind: 'places-circle',
        places: ['kettle-trail', 'ford'],
        knownAt: 1,
      }),
    ],
  },
  {
    name: 'a correction that closes a circle later',
    break: (file) => {
      const trail = fact(file, 'places', 'kettle-trail')
      section(file, 'places').push({ ...trail, id: 'ford', parent: 'kettle-trail' })
      trail['supersededIn'] = 4
      section(file, 'places').push({
        ...trail,
        recordedIn: 4,
        supersedes: 1,
        supersededIn: 5,
        parent: 'ford',
      })
    },
    problems: [
      problem('places[4].parent', '"ford"', {
        kind: 'places-circle',
        places: ['kettle-trail', 'ford'],
        knownAt: 4,
      }),
      problem('places[3].parent', '"kettle-trail"', {
        kind: 'place-withdrawn-under',
        place: 'kettle-trail',
        knownAt: 5,
      }),
    ],
  },
  {
    name: 'a second program',
    break: (file) =>
      section(file, 'places').push({ id: 'other', recordedIn: 3, name: 'Other', kind: 'program' }),
    problems: [{ path: 'places', kind: 'two-root-places', places: ['fernhollow-all', 'other'], knownAt: 3 }],
  },
  {
    name: 'a program that ceases to be known',
    break: setIn('places', 'fernhollow-all', 'supersededIn', 4),
    problems: [{ path: 'places', kind: 'no-root-place', knownAt: 4 }],
  },
  {
    name: 'a unit under nothing',
    break: (file) => delete fact(file, 'places', 'upper-fernhollow')['parent'],
    problems: [
      problem('places[2].kind', '"unit"', { kind: 'place-misplaced', place: 'unit', under: 'nothing' }),
    ],
  },
  {
    name: 'a unit under a place',
    break: (file) =>
      section(file, 'places').push({
        id: 'odd',
        recordedIn: 1,
        name: 'Odd',
        kind: 'unit',
        parent: 'kettle-trail',
      }),
    problems: [
      problem('places[3].parent', '"kettle-trail"', {
        kind: 'place-misplaced',
        place: 'unit',
        under: 'place',
      }),
    ],
  },
]

const federal = (file: Raw): Raw => fact(file, 'editions', 'federal-crosscut-2016')

const books: Case[] = [
  {
    name: 'a book without an edition',
    break: (file) =>
      section(file, 'books').push({ id: 'empty', recordedIn: 2, name: 'Empty', says: 'Nothing.' }),
    problems: [problem('books[1]', '"empty"', { kind: 'book-without-edition', book: 'empty' })],
  },
  {
    name: 'a day between two editions',
    break: (file) => {
      federal(file)['lastDay'] = '2026-12-31'
      section(file, 'editions').push({
        ...federal(file),
        id: 'next',
        firstDay: '2027-01-02',
        lastDay: undefined,
      })
    },
    problems: [
      problem('editions[1].firstDay', '"2027-01-02"', {
        kind: 'editions-gap',
        book: 'federal-crosscut',
        first: '2027-01-01',
        last: '2027-01-01',
        knownAt: 1,
      }),
    ],
  },
  {
    name: 'a gap that a correction makes, and a later one closes',
    break: (file) => {
      const first = federal(file)
      Object.assign(first, { lastDay: '2026-12-31', supersededIn: 3 })
      section(file, 'editions').push(
        { ...first, recordedIn: 3, supersedes: 1, supersededIn: 4, lastDay: '2026-12-30' },
        { ...first, recordedIn: 4, supersedes: 3, supersededIn: undefined },
        { ...first, id: 'next', firstDay: '2027-01-01', lastDay: undefined, supersededIn: undefined },
      )
    },
    problems: [
      problem('editions[3].firstDay', '"2027-01-01"', {
        kind: 'editions-gap',
        book: 'federal-crosscut',
        first: '2026-12-31',
        last: '2026-12-31',
        knownAt: 3,
      }),
    ],
  },
  {
    name: 'two editions on the same days',
    break: (file) => {
      federal(file)['lastDay'] = '2027-01-31'
      section(file, 'editions').push({
        ...federal(file),
        id: 'next',
        firstDay: '2027-01-01',
        lastDay: undefined,
      })
    },
    problems: [
      problem('editions[1].firstDay', '"2027-01-01"', {
        kind: 'editions-overlap',
        book: 'federal-crosscut',
        editions: ['federal-crosscut-2016', 'next'],
        first: '2027-01-01',
        last: '2027-01-31',
        knownAt: 1,
      }),
    ],
  },
  {
    name: 'an edition after one without a last day',
    break: (file) => section(file, 'editions').push({ ...federal(file), id: 'next', firstDay: '2027-01-01' }),
    problems: [
      problem('editions[1].firstDay', '"2027-01-01"', {
        kind: 'editions-overlap',
        book: 'federal-crosscut',
        editions: ['federal-crosscut-2016', 'next'],
        first: '2027-01-01',
        knownAt: 1,
      }),
    ],
  },
  {
    name: 'an edition that lacks a rule',
    break: (file) => {
      federal(file)['rules'] = section(federal(file), 'rules').filter((rule) => rule['kind'] !== 'suspension')
    },
    problems: [
      {
        path: 'editions[0].rules',
        kind: 'edition-fault',
        fault: { kind: 'rule-missing', ruleKind: 'suspension' },
      },
    ],
  },
]

describe('the tree of places', () => {
  it.each(trees)('[PR11] $name', ({ break: change, problems }) => {
    const file = example()
    change(file)
    expect(problemsOf(file)).toEqual(problems)
  })

  it('[PR11] a place lies at most 40 deep', () => {
    const file = example()
    const places = Array.from({ length: 42 }, (_, at) => ({
      id: `p-${at}`,
      recordedIn: 1,
      name: `Place ${at}`,
      kind: 'place',
      parent: at === 0 ? 'kettle-trail' : `p-${at - 1}`,
    }))
    section(file, 'places').push(...places.slice(0, 37))
    expect(problemsOf(file)).toEqual([])
    section(file, 'places').push(...places.slice(37))
    expect(problemsOf(file).map((problem) => problem.kind)).toContain('places-too-deep')
  })
})

describe('books and editions', () => {
  it.each(books)('[PR12] $name', ({ break: change, problems }) => {
    const file = example()
    change(file)
    expect(problemsOf(file)).toEqual(problems)
  })
})
