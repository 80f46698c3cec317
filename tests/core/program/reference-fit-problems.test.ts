import { describe, expect, it } from 'vitest'
import {
  example,
  fact,
  problem,
  problemsOf,
  section,
  setIn,
  type Case,
  type Change,
  type Raw,
} from './small-program.ts'

const subject = (value: Raw): Change => setIn('suspensions', 'tomo-stand-down', 'subject', value)

const between: Case[] = [
  {
    name: 'a unit that is a place of another kind',
    break: setIn('memberships', 'ines-staff', 'unit', 'kettle-trail'),
    problems: [
      problem('memberships[0].unit', '"kettle-trail"', {
        kind: 'not-a-unit',
        id: 'kettle-trail',
        found: 'place',
      }),
    ],
  },
  {
    name: 'a suspension of a unit that is the whole program',
    break: subject({ kind: 'unit', unit: 'fernhollow-all' }),
    problems: [
      problem('suspensions[0].subject.unit', '"fernhollow-all"', {
        kind: 'not-a-unit',
        id: 'fernhollow-all',
        found: 'program',
      }),
    ],
  },
  {
    name: 'a resolution of a restriction that is not in words',
    break: setIn('resolutions', 'tomo-slope-read', 'restriction', 'width'),
    problems: [
      problem('resolutions[0].restriction', '"width"', {
        kind: 'restriction-not-words',
        restriction: 'width',
      }),
    ],
  },
  {
    name: 'a lift before the suspension',
    break: setIn('lifts', 'tomo-lift', 'day', '2027-05-25'),
    problems: [
      problem('lifts[0].day', '"2027-05-25"', {
        kind: 'lift-before-suspension',
        day: '2027-05-25',
        firstDay: '2027-05-26',
      }),
    ],
  },
  {
    name: 'a person known only later',
    break: setIn('people', 'tomo', 'recordedIn', 3),
    problems: [
      'memberships[1].person',
      'certificates[2].person',
      'certificates[4].person',
      'cards[2].person',
    ].map((path) =>
      problem(path, '"tomo"', {
        kind: 'refers-to-later',
        to: 'people',
        id: 'tomo',
        recordedIn: 2,
        knownFrom: 3,
      }),
    ),
  },
]

const federal = (file: Raw): Raw => fact(file, 'editions', 'federal-crosscut-2016')

describe('references that lead to what does not fit', () => {
  it('[PR10] an order for one card is of the book of the card', () => {
    const file = example()
    section(file, 'books').push({ id: 'other', recordedIn: 1, name: 'Other', says: 'Invented.' })
    section(file, 'editions').push({ ...federal(file), id: 'other-1', book: 'other' })
    Object.assign(fact(file, 'extensions', 'federal-extension-2021'), {
      book: 'other',
      recordedIn: 3,
      of: { kind: 'card', card: 'tomo-card' },
    })
    expect(problemsOf(file)).toEqual([
      problem('extensions[0].book', '"other"', {
        kind: 'extension-of-another-book',
        book: 'other',
        card: 'tomo-card',
        cardBook: 'federal-crosscut',
      }),
    ])
  })

  it.each(between)('[PR10] $name', ({ break: change, problems }) => {
    const file = example()
    change(file)
    expect(problemsOf(file)).toEqual(problems)
  })
})
