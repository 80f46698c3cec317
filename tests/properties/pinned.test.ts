import { expect, it } from 'vitest'
import { ask, askBriefly, openRecords } from '../../lib/core/authority/ask.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { card, ending, extension, suspension } from '../builders/cards.ts'
import {
  adult,
  assignment,
  certificate,
  certificates,
  designation,
  membership,
  permission,
  person,
} from '../builders/people.ts'
import { records, withSection } from '../builders/records.ts'
import { place, question, work } from '../builders/work.ts'
import { plainAnswer } from '../plain/answer.ts'
import { plainCompany } from '../plain/company.ts'
import { plainRemedies } from '../plain/remedies.ts'
import { canonicalAnswer, canonicalCompany, canonicalRemedies } from './canonical.ts'

// Cases in which the fast and the plain answer once differed, by hand and as short as they can be.

/** The answer about one person, which must be that of the plain version too. */
function bothAnswer(of: Records, asked: Question, who = 'p-1') {
  const [answer] = askBriefly(openRecords(of), { ...asked, persons: [who] })
  if (answer === undefined) throw new Error(`${who} is not on record`)
  expect(canonicalAnswer(answer)).toEqual(canonicalAnswer(plainAnswer(of, asked, who)))
  return answer
}

function kindsOf(findings: readonly { kind: string }[]): string[] {
  return findings.map(({ kind }) => kind).sort()
}

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

it('[AU4] [AU24] of two cards the one that a decision ends sooner has the earlier last day', () => {
  const unrecognised = { book: 'interagency-faller', lastDay: '2028-04-13' }
  const two = records(
    adult('p-1', {
      cards: [
        card('p-1', 'basic', { ...unrecognised, id: 'card-a' }),
        card('p-1', 'advanced', { ...unrecognised, id: 'card-b', line: 2 }),
      ],
      endings: [ending('card-a', '2027-08-01')],
    }),
  )
  const { findings } = bothAnswer(two, question(work(), '2027-07-08'))
  expect(findings).toMatchObject([{ kind: 'book-does-not-recognise', level: 'advanced' }])
})

it('[AU3] [AU4] words that stand on a card twice count once among its findings', () => {
  const words = (id: string) => ({ id, kind: 'words' as const, text: 'made-up words' })
  const two = records(
    adult('p-1', {
      certificates: [certificate('p-1', 'first-aid')],
      memberships: [
        membership('p-1', { capacity: 'volunteer', firstDay: '2027-08-01', lastDay: '2027-12-31' }),
      ],
      cards: [
        card('p-1', 'A', { id: 'card-a' }),
        card('p-1', 'C', { id: 'card-c', line: 2, restrictions: [words('one'), words('two')] }),
      ],
    }),
  )
  const { findings } = bothAnswer(two, question(work({ complexity: 'high' }), '2027-07-08'))
  expect(kindsOf(findings)).toContain('words-unresolved')
})

it('[AU26] an order covers no day before the card counts', () => {
  const undated = card('p-1', 'B', { effectiveDay: '2027-07-08' })
  const { lastDay: _lastDay, ...withoutLastDay } = undated
  const late = records(adult('p-1', { cards: [withoutLastDay] }), {
    extensions: [
      extension('order', {
        runsTo: '2027-07-20',
        effectiveDay: '2027-07-31',
        of: { kind: 'card', card: undated.id },
      }),
    ],
  })
  const { notes } = bothAnswer(late, question(work(), '2027-07-07', '2027-07-08'))
  const byOrder = notes.filter(({ kind }) => kind === 'valid-only-by-a-later-order')
  expect(byOrder).toMatchObject([{ days: [{ first: '2027-07-08', last: '2027-07-08' }] }])
})

it('[AU26] the note tells the days of the order that it names', () => {
  const moved = records(adult('p-1', { cards: [card('p-1', 'B', { lastDay: '2027-06-30' })] }), {
    extensions: [
      extension('single', {
        runsTo: '2027-10-15',
        effectiveDay: '2027-07-20',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('blanket', { runsTo: '2028-06-30' }),
    ],
  })
  const { notes } = bothAnswer(moved, question(work(), '2027-07-08'))
  const byOrder = notes.filter(({ kind }) => kind === 'valid-only-by-a-later-order')
  expect(byOrder).toMatchObject([{ effectiveDay: '2027-07-20', runsTo: '2027-10-15' }])
})

it('[AU25] a single order never takes a card out of a blanket window it ended in', () => {
  const both = records(adult('p-1', { cards: [card('p-1', 'B', { lastDay: '2027-10-15' })] }), {
    extensions: [
      extension('blanket', {
        runsTo: '2028-06-30',
        of: { kind: 'window', firstDay: '2027-10-01', lastDay: '2027-10-31' },
      }),
      extension('single', { runsTo: '2027-11-15', of: { kind: 'card', card: 'card-p-1' } }),
    ],
  })
  expect(bothAnswer(both, question(work(), '2027-07-08')).holdsThrough).toBe('2028-06-30')
})

it('[AU25] a later single order takes nothing from what an earlier one brought into a window', () => {
  const twice = records(adult('p-1', { cards: [card('p-1', 'B', { lastDay: '2027-07-02' })] }), {
    extensions: [
      extension('first', {
        runsTo: '2027-07-15',
        effectiveDay: '2027-02-01',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('later', {
        runsTo: '2027-08-06',
        effectiveDay: '2027-05-15',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('blanket', {
        runsTo: '2028-01-29',
        effectiveDay: '2027-01-16',
        of: { kind: 'window', firstDay: '2027-07-14', lastDay: '2027-07-25' },
      }),
    ],
  })
  expect(bothAnswer(twice, question(work(), '2027-07-08')).holdsThrough).toBe('2028-01-29')
})

it('[AU26] days of a window that only a later single order opened are told with that order', () => {
  const { lastDay: _lastDay, ...undated } = card('p-1', 'B')
  const opened = records(adult('p-1', { cards: [undated] }), {
    extensions: [
      extension('single', {
        runsTo: '2027-07-09',
        effectiveDay: '2027-07-20',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('blanket', {
        runsTo: '2027-07-31',
        effectiveDay: '2027-07-01',
        of: { kind: 'window', firstDay: '2027-07-05', lastDay: '2027-07-10' },
      }),
    ],
  })
  const { notes } = bothAnswer(opened, question(work(), '2027-07-08', '2027-07-22'))
  const byOrder = notes.filter(({ kind }) => kind === 'valid-only-by-a-later-order')
  expect(byOrder).toMatchObject([
    { effectiveDay: '2027-07-20', runsTo: '2027-07-09', days: [{ first: '2027-07-08', last: '2027-07-19' }] },
  ])
})

it('[AU26] a blanket order that does not take the card in is not the one that is told', () => {
  const { lastDay: _lastDay, ...undated } = card('p-1', 'B')
  const beside = records(adult('p-1', { cards: [undated] }), {
    extensions: [
      extension('single', {
        runsTo: '2027-07-18',
        effectiveDay: '2027-08-03',
        of: { kind: 'card', card: 'card-p-1' },
      }),
      extension('blanket', {
        runsTo: '2027-08-20',
        effectiveDay: '2027-08-03',
        of: { kind: 'window', firstDay: '2027-08-03', lastDay: '2027-08-19' },
      }),
    ],
  })
  const { notes } = bothAnswer(beside, question(work(), '2027-07-08'))
  const byOrder = notes.filter(({ kind }) => kind === 'valid-only-by-a-later-order')
  expect(byOrder).toMatchObject([{ runsTo: '2027-07-18' }])
})

it('[AU4] of two cards otherwise alike one with a last day on record speaks before one without', () => {
  const unrecognised = { book: 'interagency-faller', effectiveDay: '2027-08-15' as const }
  const { lastDay: _lastDay, ...undated } = card('p-1', 'basic', { ...unrecognised, id: 'card-a' })
  const dated = card('p-1', 'advanced', { ...unrecognised, id: 'card-b', line: 2, lastDay: '2027-12-28' })
  const { findings } = bothAnswer(
    records(adult('p-1', { cards: [undated, dated] })),
    question(work(), '2027-07-08'),
  )
  expect(findings[0]).toMatchObject({ kind: 'book-does-not-recognise', level: 'advanced' })
})

it('[AU4] of two cards without a last day one that a decision ends speaks before one without an end', () => {
  const undated = ['card-a', 'card-b'].map((id, line) => {
    const level = id === 'card-a' ? 'basic' : 'advanced'
    const { lastDay: _lastDay, ...open } = card('p-1', level, {
      book: 'interagency-faller',
      id,
      line: line + 1,
    })
    return open
  })
  const two = records(adult('p-1', { cards: undated, endings: [ending('card-b', '2027-08-02')] }))
  const { findings } = bothAnswer(two, question(work(), '2027-07-08'))
  expect(findings[0]).toMatchObject({ kind: 'book-does-not-recognise', level: 'advanced' })
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
