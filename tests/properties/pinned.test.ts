import { expect, it } from 'vitest'
import { ask, openRecords } from '../../lib/core/authority/ask.ts'
import { card, suspension } from '../builders/cards.ts'
import {
  adult,
  assignment,
  certificates,
  designation,
  membership,
  permission,
  person,
} from '../builders/people.ts'
import { records, withSection } from '../builders/records.ts'
import { place, question, work } from '../builders/work.ts'
import { plainCompany } from '../plain/company.ts'
import { plainRemedies } from '../plain/remedies.ts'
import { bothAnswer, kindsOf } from './both-answer.ts'
import { canonicalCompany, canonicalRemedies } from './canonical.ts'

// Cases in which the fast and the plain answer once differed, by hand and as short as they can be.

it('[AU9] that there is no card neither comes nor goes when an assignment ends', () => {
  const trained = records(
    adult('p-1', { assignments: [assignment('p-1', ['log-1'], ['p-2'])] }),
    adult('p-2', { designations: [designation('p-2')] }),
  )
  const { endedBy } = bothAnswer(trained, question(work({ item: 'log-1' }), '2027-06-05'))
  expect(kindsOf(endedBy?.came ?? [])).toEqual([])
  expect(kindsOf(endedBy?.went ?? [])).toEqual(['training-only'])
})

it('[AU9] a finding that allows more on one day stands once among the findings of the span', () => {
  const trained = records(
    adult('p-1', { assignments: [assignment('p-1', ['log-1'], ['p-2'])] }),
    adult('p-2', { designations: [designation('p-2')] }),
  )
  const { findings } = bothAnswer(trained, question(work({ item: 'log-1' }), '2027-06-05', '2027-06-06'))
  expect(kindsOf(findings)).toEqual(['no-card', 'training-only'])
})

it('[AU47] a permission that has run out lets the earlier refusal stand', () => {
  const minor = records({
    people: [person('p-1', { birthDate: '2010-10-03' })],
    memberships: [
      membership('p-1', { capacity: 'volunteer', firstDay: '2027-01-01', lastDay: '2027-12-31' }),
    ],
    certificates: certificates('p-1'),
    cards: [card('p-1', 'A')],
    permissions: [
      permission('p-1', { says: 'refused', firstDay: '2027-01-01' }),
      permission('p-1', { id: 'given', firstDay: '2027-05-01', lastDay: '2027-05-31' }),
    ],
  })
  const { spans } = bothAnswer(minor, question(work(), '2027-05-31', '2027-06-01'))
  expect(spans.map(({ standing }) => standing)).toEqual(['own-level', 'none'])
})

it('[AU47] a permission that has run out lets no older one count again', () => {
  const minor = records({
    people: [person('p-1', { birthDate: '2010-10-03' })],
    memberships: [
      membership('p-1', { capacity: 'volunteer', firstDay: '2027-01-01', lastDay: '2027-12-31' }),
    ],
    certificates: certificates('p-1'),
    cards: [card('p-1', 'A')],
    permissions: [
      permission('p-1', { firstDay: '2027-01-01' }),
      permission('p-1', { id: 'for-may', firstDay: '2027-05-01', lastDay: '2027-05-31' }),
    ],
  })
  expect(bothAnswer(minor, question(work(), '2027-06-01')).standing).toBe('unknown')
})

it('[AU36] a book that grants nothing for the work trains nobody in it', () => {
  const trained = records(
    { book: 'federal-crosscut' },
    adult('p-1', { assignments: [assignment('p-1', ['log-1'], ['p-2'])] }),
    adult('p-2', { designations: [designation('p-2', { sawKind: 'chain-saw' })] }),
  )
  const asked = question(work({ item: 'log-1', sawKind: 'chain-saw' }), '2027-06-05')
  const { standing, findings } = bothAnswer(trained, asked)
  expect(standing).toBe('none')
  expect(kindsOf(findings)).toEqual(['no-card'])
})

it('[AU3] [AU43] memberships that speak together are all named by the need of a supervisor', () => {
  const minor = records({
    people: [person('p-1', { birthDate: '2010-10-03' })],
    memberships: ['one', 'two'].map((id) =>
      membership('p-1', { id, capacity: 'volunteer', firstDay: '2027-01-01', lastDay: '2027-12-31' }),
    ),
    certificates: certificates('p-1'),
    permissions: [permission('p-1')],
    cards: [card('p-1', 'B')],
  })
  const { findings } = bothAnswer(minor, question(work(), '2027-07-08'))
  expect(findings.find(({ kind }) => kind === 'needs-supervisor')?.records).toEqual(['one', 'two'])
})

it('[AU43] each rule of age that wants a supervisor says so', () => {
  const minor = records({
    people: [person('p-1', { birthDate: '2010-10-03' })],
    memberships: [
      membership('p-1', { capacity: 'volunteer', firstDay: '2027-01-01', lastDay: '2027-12-31' }),
    ],
    certificates: certificates('p-1'),
    permissions: [permission('p-1')],
    cards: [card('p-1', 'B')],
  })
  const editions = minor.editions.map((edition) => ({
    ...edition,
    rules: edition.rules.flatMap((rule) =>
      rule.id === 'age.volunteer.bucking' ? [rule, { ...rule, id: 'age.volunteer.again' }] : [rule],
    ),
  }))
  const { findings } = bothAnswer(withSection(minor, 'editions', editions), question(work(), '2027-07-08'))
  const wanted = findings
    .filter(({ kind }) => kind === 'needs-supervisor')
    .flatMap(({ rule }) => rule?.rule ?? [])
  expect(wanted.sort()).toEqual(['age.volunteer.again', 'age.volunteer.bucking'])
})

it('[AU67] somebody asked by name whom the company does not list is there on every day', () => {
  const base = records(
    adult('p-1', { cards: [card('p-1', 'A')] }),
    adult('p-2', { cards: [card('p-2', 'B')] }),
  )
  const asked = question(work(), '2027-07-08', '2027-07-08', {
    persons: ['p-1'],
    company: [{ person: 'p-2' }],
  })
  const { company } = ask(openRecords(base), asked)
  expect(company).toMatchObject([
    { learners: [{ person: 'p-1', standing: 'own-level', may: ['p-2'] }], feasible: true },
  ])
  expect(canonicalCompany(company ?? [])).toEqual(canonicalCompany(plainCompany(base, asked)))
})

it('[AU76] a missing place is at its best where the work is not stopped, though another is named first', () => {
  const base = records(
    adult('p-1', {
      cards: [
        card('p-1', 'B', { restrictions: [{ id: 'where', kind: 'places', places: ['gate', 'ford'] }] }),
      ],
      suspensions: [
        suspension('stop', { subject: { kind: 'place', place: 'gate' }, firstDay: '2027-07-01' }),
      ],
    }),
    { places: [place('unit', { kind: 'unit' }), place('gate', { parent: 'unit' }), place('ford')] },
  )
  const asked = question(work(), '2027-07-08')
  const [answer] = ask(openRecords(base), asked).answers
  if (answer === undefined) throw new Error('p-1 is not on record')
  expect(canonicalRemedies(answer.remedies)).toEqual(canonicalRemedies(plainRemedies(base, asked, 'p-1')))
  expect(answer.remedies.sets.map((set) => set.map(({ kind }) => kind))).toEqual([['record-missing-fact']])
})

it('[AU76] a membership that is missing altogether lacks its capacity and its agreement', () => {
  const minor = records({
    people: [person('p-1', { birthDate: '2010-10-03' })],
    certificates: certificates('p-1'),
    cards: [card('p-1', 'B')],
    permissions: [permission('p-1')],
  })
  const asked = question(work(), '2027-07-08')
  const [answer] = ask(openRecords(minor), asked).answers
  if (answer === undefined) throw new Error('p-1 is not on record')
  expect(canonicalRemedies(answer.remedies)).toEqual(canonicalRemedies(plainRemedies(minor, asked, 'p-1')))
  const missing = answer.remedies.sets.map((set) =>
    set.map((change) => ('what' in change ? change.what : change.kind)),
  )
  expect(missing).toEqual([['agreement', 'capacity', 'add-supervisor']])
  expect(
    answer.remedies.sets.flat().flatMap((change) => ('records' in change ? change.records : [])),
  ).toEqual(['p-1'])
})

it('[AU35] [AU73] under an assignment the supervisor to add is one whom it names, and a last day that is missing may be recorded', () => {
  const { lastDay: _lastDay, ...endless } = card('p-1', 'B')
  const trained = records(
    adult('p-1', { cards: [endless], assignments: [assignment('p-1', ['log-1'], ['p-3', 'p-2'])] }),
    adult('p-2', { designations: [designation('p-2')] }),
    adult('p-3'),
  )
  const asked = question(work({ item: 'log-1' }), '2027-06-05', '2027-06-05')
  const { standing, findings } = bothAnswer(trained, asked)
  expect({ standing, kinds: kindsOf(findings) }).toEqual({
    standing: 'training',
    kinds: ['not-on-record', 'training-only'],
  })
  const [fast] = ask(openRecords(trained), { ...asked, persons: ['p-1'] }).answers
  const remedies = canonicalRemedies(fast!.remedies)
  expect(remedies).toEqual(canonicalRemedies(plainRemedies(trained, asked, 'p-1')))
  expect(fast!.remedies.sets).toMatchObject([
    [{ kind: 'record-missing-fact', what: 'last-day', records: ['card-p-1'] }],
    [{ kind: 'add-supervisor', level: 'B', trainer: true, trainers: ['p-2'] }],
  ])
})
