import { describe, expect, it } from 'vitest'
import { addVersion, all, example, fact, problemsOf, section, setIn, type Change } from './small-program.ts'

/** A change that leaves a record with one key that does not read, and what is told as path and kind. */
type PartCase = { name: string; break: Change; told: string[] }

const unknownKey = (name: string, id: string) => setIn(name, id, 'issuer', 'an invented class')

const cases: PartCase[] = [
  {
    name: 'days backwards beside an unknown key',
    break: all(
      unknownKey('certificates', 'wren-cpr'),
      setIn('certificates', 'wren-cpr', 'lastDay', '2015-01-01'),
    ),
    told: ['certificates[5].issuer unknown-key', 'certificates[5].lastDay span-backwards'],
  },
  {
    name: 'a card that ends before it begins beside a wrong level',
    break: all(setIn('cards', 'tomo-card', 'level', 7), setIn('cards', 'tomo-card', 'lastDay', '2026-03-08')),
    told: ['cards[2].level wrong-type', 'cards[2].lastDay span-backwards'],
  },
  {
    name: 'a range backwards beside a missing name',
    break: all(setIn('expectedWork', 'kettle-rest', 'least', 30), (file) => {
      delete fact(file, 'expectedWork', 'kettle-rest')['name']
    }),
    told: ['expectedWork[0].name missing-key', 'expectedWork[0].most range-backwards'],
  },
  {
    name: 'an unknown person beside a word that is not allowed',
    break: all(
      setIn('memberships', 'wren-friends', 'capacity', 'helper'),
      setIn('memberships', 'wren-friends', 'person', 'wrenn'),
    ),
    told: ['memberships[2].capacity not-one-of', 'memberships[2].person refers-to-nothing'],
  },
  {
    name: 'a reference beside an entry that does not read',
    break: all(
      setIn('lifts', 'tomo-lift', 'recordedIn', 1.5),
      setIn('lifts', 'tomo-lift', 'suspension', 'gone'),
    ),
    told: ['lifts[0].recordedIn wrong-type', 'lifts[0].suspension refers-to-nothing'],
  },
  {
    name: 'a suspended card number that nobody has, beside a missing reason',
    break: all(
      setIn('suspensions', 'tomo-stand-down', 'subject', { kind: 'card', number: 'FH-999' }),
      (file) => {
        delete fact(file, 'suspensions', 'tomo-stand-down')['reason']
      },
    ),
    told: ['suspensions[0].reason missing-key', 'suspensions[0].subject.number refers-to-nothing'],
  },
  {
    name: 'twins of which one does not read',
    break: addVersion('people', 'tomo', { name: 7 }),
    told: ['people[3].name wrong-type', 'people[3] twin'],
  },
  {
    name: 'twins of which neither reads',
    break: all(setIn('people', 'tomo', 'name', 7), addVersion('people', 'tomo', {})),
    told: ['people[1].name wrong-type', 'people[3].name wrong-type', 'people[3] twin'],
  },
  {
    name: 'two versions at once of which one does not read',
    break: addVersion('people', 'tomo', { recordedIn: 3, name: 7 }),
    told: ['people[3].name wrong-type', 'people[3] two-at-once'],
  },
  {
    name: 'an entry that does not exist and a correction of nothing beside a bad name',
    break: all(
      setIn('people', 'tomo', 'name', 7),
      setIn('people', 'tomo', 'recordedIn', 9),
      setIn('people', 'tomo', 'supersedes', 8),
    ),
    told: [
      'people[1].name wrong-type',
      'people[1].recordedIn no-such-entry',
      'people[1].supersedes supersedes-nothing',
    ],
  },
  {
    name: 'a card number of two people, one card of which does not read',
    break: all(setIn('cards', 'tomo-card', 'number', 'FH-001'), setIn('cards', 'tomo-card', 'level', 7)),
    told: [
      'cards[2].level wrong-type',
      'cards[2].number number-of-two-people',
      'cards[2].line line-of-two-cards',
    ],
  },
  {
    name: 'an item and expected work of one id, of which one does not read',
    break: (file) =>
      section(file, 'items').push({ ...fact(file, 'items', 'kettle-log-1'), id: 'kettle-rest', name: 7 }),
    told: ['items[1].name wrong-type', 'expectedWork[0].id id-in-two-sections'],
  },
  // From here on nothing but what did not read is told.
  {
    name: 'an end that does not read may be before the next version',
    break: all(
      addVersion('people', 'tomo', { recordedIn: 3, supersedes: 2 }),
      (file) => (section(file, 'people')[1]!['supersededIn'] = 'three'),
    ),
    told: ['people[1].supersededIn wrong-type'],
  },
  {
    name: 'an unknown key may be the end, written wrong',
    break: all(
      addVersion('people', 'tomo', { recordedIn: 3, supersedes: 2 }),
      (file) => (section(file, 'people')[1]!['supercededIn'] = 3),
    ),
    told: ['people[1].supercededIn unknown-key'],
  },
  {
    name: 'an unknown key may be the decision, written wrong',
    break: (file) => {
      const card = fact(file, 'cards', 'tomo-card')
      card['decided'] = card['decision']
      delete card['decision']
    },
    told: ['cards[2].decided unknown-key'],
  },
  {
    name: 'an entry that does not read may be the one that is corrected',
    break: all(
      addVersion('people', 'tomo', { recordedIn: 3, supersedes: 2 }),
      (file) => (section(file, 'people')[1]!['recordedIn'] = 'two'),
    ),
    told: ['people[1].recordedIn wrong-type'],
  },
  {
    name: 'a day that does not read is in no order',
    break: setIn('certificates', 'wren-cpr', 'firstDay', '2027-13-01'),
    told: ['certificates[5].firstDay no-such-day'],
  },
]

describe('a record with a key that does not read', () => {
  it.each(cases)('[PR23] $name', ({ break: change, told }) => {
    const file = example()
    change(file)
    expect(problemsOf(file).map(({ path, kind }) => `${path} ${kind}`)).toEqual(told)
  })
})
