import { describe, expect, it } from 'vitest'
import { ask, openRecords, workOfItem } from '../../../lib/core/authority/ask.ts'
import { card } from '../../builders/cards.ts'
import { adult, certificate, certificates, membership, permission, person } from '../../builders/people.ts'
import { records } from '../../builders/records.ts'
import { item, question, rating, work } from '../../builders/work.ts'
import { answerAbout, companyOf, daysOfNote, expectAnswer } from './expected.ts'

const CARD_ENDS = '2028-04-13'

describe('a volunteer of sixteen', () => {
  const minor = {
    people: [person('p-1', { birthDate: '2010-10-03' })],
    memberships: [
      membership('p-1', { capacity: 'volunteer', firstDay: '2027-01-01', lastDay: '2027-12-31' }),
    ],
    certificates: certificates('p-1'),
    cards: [card('p-1', 'A')],
  }
  const permitted = { ...minor, permissions: [permission('p-1')] }
  const july = question(work(), '2027-07-01', '2027-07-31')

  it('[AU43] [AU47] worked 15: a permission that is not on record is unknown', () => {
    const answer = answerAbout(records(minor), july)
    expectAnswer(answer, july, {
      standing: 'unknown',
      findings: [
        { kind: 'under-age', years: 18, capacity: 'volunteer' },
        { kind: 'needs-supervisor', supervisor: 'B' },
        { kind: 'guardian-permission-missing', says: 'not-on-record' },
      ],
      holdsThrough: '2027-12-31',
      endedBy: { day: '2028-01-01', standing: 'none' },
    })
    expect(daysOfNote(answer, 'successor-not-held')).toEqual(['2027-07-01/2027-07-31'])
  })

  it('[AU43] [AU47] worked 16: with the permission, bucking under a B', () => {
    expectAnswer(answerAbout(records(permitted), july), july, {
      standing: 'own-level',
      findings: [
        { kind: 'under-age', years: 18, capacity: 'volunteer' },
        { kind: 'needs-supervisor', supervisor: 'B' },
      ],
      holdsThrough: '2027-12-31',
      endedBy: { day: '2028-01-01', standing: 'none' },
    })
  })

  it('[AU43] [AU35] worked 17: felling is not for a minor, card or none', () => {
    const felling = question(work({ workKind: 'felling' }), '2027-07-01', '2027-07-31')
    expectAnswer(answerAbout(records(permitted), felling), felling, {
      standing: 'none',
      findings: ['no-card', 'under-age'],
      holdsThrough: 'open',
    })
  })
})

describe('how a certificate was delivered and who saw it', () => {
  const cards = [card('p-1', 'B')]
  const online = certificate('p-1', 'cpr', {
    delivery: 'online',
    firstDay: '2027-03-01',
    lastDay: '2029-02-28',
  })
  const asked = question(work({ complexity: 'moderate' }), '2027-07-08')
  const withCpr = (...cpr: ReturnType<typeof certificate>[]) =>
    records(adult('p-1', { cards, certificates: [certificate('p-1', 'first-aid'), ...cpr] }))

  it('[AU49] worked 18: online only without a skills check on record does not count', () => {
    const answer = answerAbout(withCpr(online), asked)
    expectAnswer(answer, asked, {
      standing: 'none',
      findings: [{ kind: 'certificate-delivery', subject: 'cpr' }],
      holdsThrough: 'open',
    })
    expect(daysOfNote(answer, 'successor-not-held')).toEqual(['2027-07-08/2027-07-08'])
  })

  it('[AU49] worked 19: an earlier class in person makes the online one count', () => {
    const inPerson = certificate('p-1', 'cpr', {
      id: 'cpr-earlier',
      firstDay: '2023-03-01',
      lastDay: '2025-02-28',
    })
    expectAnswer(answerAbout(withCpr(online, inPerson), asked), asked, {
      standing: 'independent',
      findings: [],
      holdsThrough: CARD_ENDS,
      endedBy: { day: '2028-04-14', standing: 'none', came: ['card-no-longer-valid'] },
    })
  })

  it('[AU49] [AU76] worked 20: self-stated and seen by nobody is unknown until somebody sees it', () => {
    const answer = answerAbout(withCpr(certificate('p-1', 'cpr', { seen: false })), asked)
    expectAnswer(answer, asked, {
      standing: 'unknown',
      findings: [{ kind: 'certificate-not-seen', subject: 'cpr' }],
      holdsThrough: CARD_ENDS,
      endedBy: { day: '2028-04-14', standing: 'none' },
    })
    expect(answer.remedies.sets).toMatchObject([
      [{ kind: 'have-seen', subject: 'cpr', records: ['cpr-p-1'] }],
    ])
  })
})

it('[AU58] [AU65] worked 21: a rating is good on its 180th day and planned one class higher on the next', () => {
  const base = records(
    adult('p-1', { cards: [card('p-1', 'B')] }),
    adult('p-2', { cards: [card('p-2', 'C')] }),
    {
      items: [item('log-1')],
      ratings: [rating('log-1', 'moderate', 'p-2', '2027-01-09')],
    },
  )
  const log = workOfItem(openRecords(base), 'log-1', 'crosscut')
  if (log === undefined) throw new Error('the log is on record')
  const asked = question(log.work, '2027-07-08', '2027-07-09')
  const answer = answerAbout(base, asked)
  expectAnswer(answer, asked, {
    standing: 'training',
    days: [
      ['independent', '2027-07-08', '2027-07-08'],
      ['training', '2027-07-09', '2027-07-09'],
    ],
    findings: [{ kind: 'training-only', level: 'B', supervisor: 'C' }],
    holdsThrough: '2027-07-08',
    endedBy: { day: '2027-07-09', standing: 'training', came: ['training-only'], went: [] },
  })
  expect(answer.notes.find((note) => note.kind === 'rating-provisional')).toMatchObject({
    because: ['old'],
    rated: 'moderate',
    planned: 'high',
    days: [{ first: '2027-07-09', last: '2027-07-09' }],
  })
  expect(daysOfNote(answer, 'successor-not-held')).toEqual(['2027-07-08/2027-07-09'])
})

describe('words on a card', () => {
  const words = card('p-1', 'B', {
    workKinds: ['bucking', 'felling'],
    restrictions: [
      {
        id: 'slope',
        kind: 'words',
        text: 'no side-hill felling until seen again',
        workKinds: ['felling'],
      },
    ],
  })
  const base = records(adult('p-1', { cards: [words] }))

  it('[AU33] worked 22: words that nobody has resolved are unknown for the work they name', () => {
    const asked = question(work({ workKind: 'felling' }), '2027-07-08')
    expectAnswer(answerAbout(base, asked), asked, {
      standing: 'unknown',
      findings: [{ kind: 'words-unresolved', text: 'no side-hill felling until seen again' }],
      holdsThrough: CARD_ENDS,
      endedBy: { day: '2028-04-14', standing: 'none' },
    })
  })

  it('[AU29] [AU33] worked 22: and touch no other work', () => {
    const asked = question(work(), '2027-07-08')
    expectAnswer(answerAbout(base, asked), asked, {
      standing: 'independent',
      findings: [],
      holdsThrough: CARD_ENDS,
    })
  })
})

it('[AU25] [AU26] [AU62] worked 23: the order of 2021 carries a card of 2016 through 2022', () => {
  const base = records(
    adult('p-1', {
      cards: [card('p-1', 'B', { effectiveDay: '2016-10-02', lastDay: '2019-10-01' })],
      certificates: [
        certificate('p-1', 'first-aid', { firstDay: '2016-01-01' }),
        certificate('p-1', 'cpr', { firstDay: '2016-01-01' }),
      ],
    }),
  )
  const asked = question(work(), '2020-06-01', '2020-06-02', { today: '2020-06-01' })
  const answer = answerAbout(base, asked)
  expectAnswer(answer, asked, {
    standing: 'independent',
    findings: [],
    holdsThrough: '2022-12-31',
    endedBy: { day: '2023-01-01', standing: 'none', came: ['card-no-longer-valid'] },
  })
  expect(daysOfNote(answer, 'valid-only-by-a-later-order')).toEqual(['2020-06-01/2020-06-02'])
  expect(daysOfNote(answer, 'successor-not-held')).toEqual([])
})

describe('an A for bucking', () => {
  const base = records(adult('p-1', { cards: [card('p-1', 'A')] }))

  it('[AU19] worked 24: least complex under a B', () => {
    const asked = question(work({ complexity: 'least' }), '2027-07-08')
    expectAnswer(answerAbout(base, asked), asked, {
      standing: 'own-level',
      findings: [{ kind: 'needs-supervisor', supervisor: 'B' }],
      holdsThrough: CARD_ENDS,
    })
  })

  it('[AU19] worked 24: moderately complex in training under a B', () => {
    const asked = question(work({ complexity: 'moderate' }), '2027-07-08')
    expectAnswer(answerAbout(base, asked), asked, {
      standing: 'training',
      findings: [{ kind: 'training-only', level: 'A', supervisor: 'B' }],
      holdsThrough: CARD_ENDS,
    })
  })

  it('[AU19] worked 24: highly complex not at all', () => {
    const asked = question(work({ complexity: 'high' }), '2027-07-08')
    expectAnswer(answerAbout(base, asked), asked, {
      standing: 'none',
      findings: [{ kind: 'level-too-low', level: 'A', complexity: 'high' }],
      holdsThrough: 'open',
    })
  })
})

it('[AU20] worked 25: an unrated log is unknown even for a C', () => {
  const asked = question(work({ complexity: 'not-rated' }), '2027-07-08')
  expectAnswer(answerAbout(records(adult('p-1', { cards: [card('p-1', 'C')] })), asked), asked, {
    standing: 'unknown',
    findings: ['complexity-unrated'],
    holdsThrough: CARD_ENDS,
    endedBy: { day: '2028-04-14', standing: 'none' },
  })
})

describe('a company of two A, one B and a packer', () => {
  const base = records(
    adult('a-1', { cards: [card('a-1', 'A')] }),
    adult('a-2', { cards: [card('a-2', 'A')] }),
    adult('b-1', { cards: [card('b-1', 'B')] }),
    adult('packer'),
  )
  const company = ['a-1', 'a-2', 'b-1', 'packer'].map((id) => ({ person: id }))
  const asked = question(work(), '2027-07-08', '2027-07-09', { company })

  it('[AU67] [AU68] [AU70] worked 26: one B serves one of two, and the packer fails nothing', () => {
    const days = companyOf(base, asked)
    expect(days).toHaveLength(1)
    expect(days[0]).toMatchObject({
      first: '2027-07-08',
      last: '2027-07-09',
      feasible: false,
      learners: [
        { person: 'a-1', standing: 'own-level', may: ['b-1'] },
        { person: 'a-2', standing: 'own-level', may: ['b-1'] },
      ],
      short: { learners: ['a-1', 'a-2'], supervisors: ['b-1'], places: 1 },
    })
    expect(days[0]?.pairs).toHaveLength(1)
    expect(days[0]?.pairs[0]?.supervisor).toBe('b-1')
  })

  it('[AU66] worked 26: each standing is what it is without the company', () => {
    const { company: _with, ...alone } = asked
    expect(ask(openRecords(base), asked).answers).toEqual(ask(openRecords(base), alone).answers)
  })
})
