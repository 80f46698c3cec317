import { describe, expect, it } from 'vitest'
import { programDoubts } from '../../../lib/core/program/doubts.ts'
import type { Doubt } from '../../../lib/core/program/problems.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import { example, extended, fact, section, setIn, type Change, type Raw } from './small-program.ts'

function doubtsOf(...changes: Change[]): Doubt[] {
  const file = example()
  // What the example leaves open on purpose is settled first, so that a case shows its own doubt alone.
  Object.assign(fact(file, 'certificates', 'wren-cpr'), { seen: true, by: 'Invented Clerk' })
  for (const id of ['ines-bucking', 'ines-felling'])
    (fact(file, 'cards', id)['carriedIn'] as Raw)['lastReconciled'] = '2027-05-28'
  for (const change of changes) change(file)
  const read = readProgram(file)
  if (!read.ok) throw new Error(JSON.stringify(read.problem))
  return programDoubts(read.value)
}

const reconciled = (day: string | undefined): Change => {
  return (file) => {
    const carriedIn = fact(file, 'cards', 'ines-felling')['carriedIn'] as Raw
    if (day === undefined) delete carriedIn['lastReconciled']
    else carriedIn['lastReconciled'] = day
  }
}

const drop = (name: string, id: string, key: string): Change => {
  return (file) => Reflect.deleteProperty(fact(file, name, id), key)
}

const rulesOf = (file: Raw): Raw[] => section(fact(file, 'editions', 'federal-crosscut-2016'), 'rules')

/** Changes a rule of the book. */
const inBook = (id: string, change: (rule: Raw) => unknown): Change => {
  return (file) => {
    const found = rulesOf(file).find((rule) => rule['id'] === id)
    if (found === undefined) throw new Error(`no rule ${id}`)
    change(found)
  }
}

const withoutRule = (id: string): Change => {
  return (file) => {
    const rules = rulesOf(file)
    rules.splice(
      rules.findIndex((rule) => rule['id'] === id),
      1,
    )
  }
}

const cases: { name: string; changes: Change[]; doubts: object[] }[] = [
  { name: 'nothing left open', changes: [], doubts: [] },
  {
    name: 'a carried-in card a day longer than the term of its book',
    changes: [setIn('cards', 'ines-felling', 'lastDay', '2028-04-14')],
    doubts: [
      {
        path: 'cards[1]',
        person: 'ines',
        kind: 'longer-than-term',
        lastDay: '2028-04-14',
        termLastDay: '2028-04-13',
      },
    ],
  },
  {
    name: 'a card of this program a day longer than the term: its decision says so',
    changes: [setIn('cards', 'tomo-card', 'lastDay', '2029-03-09')],
    doubts: [],
  },
  { name: 'reconciled 365 days before the last entry', changes: [reconciled('2026-05-28')], doubts: [] },
  {
    name: 'reconciled 366 days before the last entry',
    changes: [reconciled('2026-05-27')],
    doubts: [
      { path: 'cards[1]', kind: 'not-reconciled', within: 365, lastReconciled: '2026-05-27', days: 366 },
    ],
  },
  {
    name: 'never reconciled',
    changes: [reconciled(undefined)],
    doubts: [{ path: 'cards[1]', kind: 'not-reconciled', within: 365 }],
  },
  {
    name: 'reconciled 30 days before the last entry, where the book wants it within 30',
    changes: [reconciled('2027-04-28'), inBook('card.reconciled', (rule) => (rule['days'] = 30))],
    doubts: [],
  },
  {
    name: 'reconciled 31 days before it',
    changes: [reconciled('2027-04-27'), inBook('card.reconciled', (rule) => (rule['days'] = 30))],
    doubts: [
      { path: 'cards[1]', kind: 'not-reconciled', within: 30, lastReconciled: '2027-04-27', days: 31 },
    ],
  },
  {
    name: 'never reconciled, under a book that wants none',
    changes: [reconciled(undefined), withoutRule('card.reconciled')],
    doubts: [],
  },
  {
    name: 'a carried-in card that has ended is reconciled no more',
    changes: [reconciled(undefined), setIn('cards', 'ines-felling', 'lastDay', '2027-05-27')],
    doubts: [],
  },
  {
    name: 'a carried-in card that had ended, but for an order that lets it run to the last entry',
    changes: [
      reconciled(undefined),
      setIn('cards', 'ines-felling', 'lastDay', '2027-05-27'),
      extended('ines-felling', '2027-05-28'),
    ],
    doubts: [{ path: 'cards[1]', kind: 'not-reconciled', within: 365 }],
  },
  {
    name: 'a carried-in card that had ended, and that an order let run to the day before',
    changes: [
      reconciled(undefined),
      setIn('cards', 'ines-felling', 'lastDay', '2027-05-26'),
      extended('ines-felling', '2027-05-27'),
    ],
    doubts: [],
  },
  {
    name: 'a card without a last day of its own, to which an order gives one',
    changes: [drop('cards', 'tomo-card', 'lastDay'), extended('tomo-card', '2027-12-31')],
    doubts: [],
  },
  { name: 'reconciled on the day of the last entry', changes: [reconciled('2027-05-28')], doubts: [] },
  {
    name: 'reconciled the day after it',
    changes: [reconciled('2027-05-29')],
    doubts: [
      {
        path: 'cards[1]',
        kind: 'reconciled-after-last-entry',
        lastReconciled: '2027-05-29',
        lastEntry: '2027-05-28',
      },
    ],
  },
  {
    name: 'reconciled far ahead, under a book that wants none',
    changes: [reconciled('2097-03-01'), withoutRule('card.reconciled')],
    doubts: [{ path: 'cards[1]', kind: 'reconciled-after-last-entry', lastReconciled: '2097-03-01' }],
  },
  {
    name: 'reconciled on the effective day of the card',
    changes: [reconciled('2027-05-01'), setIn('cards', 'ines-felling', 'effectiveDay', '2027-05-01')],
    doubts: [],
  },
  {
    name: 'reconciled the day before it',
    changes: [reconciled('2027-04-30'), setIn('cards', 'ines-felling', 'effectiveDay', '2027-05-01')],
    doubts: [
      {
        path: 'cards[1]',
        kind: 'reconciled-before-card',
        lastReconciled: '2027-04-30',
        effectiveDay: '2027-05-01',
      },
    ],
  },
  {
    name: 'a card without a last day',
    changes: [drop('cards', 'tomo-card', 'lastDay')],
    doubts: [{ path: 'cards[2]', id: 'tomo-card', person: 'tomo', kind: 'card-without-last-day' }],
  },
  {
    name: 'a card whose work kinds are not stated',
    changes: [setIn('cards', 'tomo-card', 'workKinds', 'not-stated')],
    doubts: [{ path: 'cards[2]', kind: 'work-kinds-not-stated' }],
  },
  {
    name: 'words that nobody has resolved',
    changes: [(file) => (file['resolutions'] = [])],
    doubts: [
      {
        path: 'cards[2]',
        kind: 'words-unresolved',
        restriction: 'slope',
        text: 'no side-hill work until seen again',
      },
    ],
  },
  {
    name: 'delivery not stated',
    changes: [setIn('certificates', 'ines-cpr', 'delivery', 'not-stated')],
    doubts: [{ path: 'certificates[0]', person: 'ines', kind: 'delivery-not-stated', subject: 'cpr' }],
  },
  {
    name: 'self-stated and seen by nobody',
    changes: [setIn('certificates', 'ines-cpr', 'seen', false)],
    doubts: [{ path: 'certificates[0]', kind: 'certificate-not-seen', subject: 'cpr' }],
  },
  {
    name: 'self-stated, and lapsed before the last entry',
    changes: [
      setIn('certificates', 'ines-cpr', 'seen', false),
      setIn('certificates', 'ines-cpr', 'lastDay', '2027-05-27'),
    ],
    doubts: [],
  },
  {
    name: 'a certificate without a first day',
    changes: [drop('certificates', 'ines-cpr', 'firstDay')],
    doubts: [
      { path: 'certificates[0]', kind: 'certificate-without-days', subject: 'cpr', missing: 'first-day' },
    ],
  },
  {
    name: 'a certificate without days',
    changes: [drop('certificates', 'ines-cpr', 'firstDay'), drop('certificates', 'ines-cpr', 'lastDay')],
    doubts: [{ path: 'certificates[0]', kind: 'certificate-without-days', subject: 'cpr', missing: 'both' }],
  },
  {
    name: 'a rating that its observations do not give',
    changes: [setIn('ratings', 'kettle-log-1-rated', 'complexity', 'least')],
    doubts: [
      {
        path: 'ratings[0]',
        kind: 'rating-against-observations',
        item: 'kettle-log-1',
        stated: 'least',
        observed: 'moderate',
      },
    ],
  },
  {
    name: 'observations that the worksheet does not know',
    changes: [
      (file) => ((fact(file, 'ratings', 'kettle-log-1-rated')['observations'] as Raw)['bnd'] = 'side'),
    ],
    doubts: [
      {
        path: 'ratings[0]',
        kind: 'observations-not-readable',
        item: 'kettle-log-1',
        edition: 'federal-crosscut-2016',
      },
    ],
  },
  {
    name: 'two people of one name',
    changes: [setIn('people', 'wren', 'name', 'Tomo Askeland')],
    doubts: [
      { path: 'people[1]', kind: 'same-name', name: 'Tomo Askeland', people: ['tomo', 'wren'] },
      { path: 'people[2]', kind: 'same-name', name: 'Tomo Askeland', people: ['tomo', 'wren'] },
    ],
  },
  {
    name: 'an age that is not on record',
    changes: [drop('people', 'tomo', 'birthDate')],
    doubts: [{ path: 'people[1]', id: 'tomo', person: 'tomo', kind: 'age-not-on-record' }],
  },
  {
    name: 'a capacity that is not stated',
    changes: [setIn('memberships', 'tomo-staff', 'capacity', 'not-stated')],
    doubts: [{ path: 'memberships[1]', person: 'tomo', kind: 'capacity-not-stated' }],
  },
  {
    name: 'an agreement that began and does not say until when',
    changes: [drop('memberships', 'wren-friends', 'lastDay')],
    doubts: [{ path: 'memberships[2]', kind: 'agreement-open-ended', firstDay: '2026-03-01' }],
  },
  {
    name: 'an employment that began and does not say until when: the book wants no agreement of it',
    changes: [setIn('memberships', 'tomo-staff', 'firstDay', '2026-03-01')],
    doubts: [],
  },
  {
    name: 'the same, where the book wants one of an employee',
    changes: [
      setIn('memberships', 'tomo-staff', 'firstDay', '2026-03-01'),
      inBook('agreement', (rule) => (rule['capacities'] = ['employee'])),
    ],
    doubts: [{ path: 'memberships[1]', kind: 'agreement-open-ended', firstDay: '2026-03-01' }],
  },
  {
    name: 'an open agreement of a volunteer, where the book wants none of anybody',
    changes: [drop('memberships', 'wren-friends', 'lastDay'), withoutRule('agreement')],
    doubts: [],
  },
  {
    name: 'an administrative suspension that is open-ended',
    changes: [
      setIn('suspensions', 'tomo-stand-down', 'kind', 'administrative'),
      setIn('suspensions', 'tomo-stand-down', 'form', 'suspension'),
      (file) => (file['lifts'] = []),
    ],
    doubts: [{ path: 'suspensions[0]', kind: 'administrative-open-ended', firstDay: '2027-05-26' }],
  },
  {
    name: 'an administrative suspension that was lifted',
    changes: [setIn('suspensions', 'tomo-stand-down', 'kind', 'administrative')],
    doubts: [],
  },
]

describe('what somebody should look at', () => {
  it.each(cases)('[PR19] $name', ({ changes, doubts }) => {
    const found = doubtsOf(...changes)
    expect(found).toHaveLength(doubts.length)
    expect(found).toMatchObject(doubts)
  })

  it('[PR19] only what is now known is doubted', () => {
    const found = doubtsOf((file) => {
      const wrong = fact(file, 'certificates', 'ines-cpr')
      section(file, 'certificates').push({ ...wrong, recordedIn: 3, supersedes: 2 })
      Object.assign(wrong, { seen: false, supersededIn: 3 })
    })
    expect(found).toEqual([])
  })

  it('[PR19] a program without entries has none', () => {
    const read = readProgram(example())
    if (!read.ok) throw new Error('the example is broken')
    expect(programDoubts({ ...read.value, entries: [] })).toEqual([])
  })
})
