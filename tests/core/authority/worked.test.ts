import { describe, expect, it } from 'vitest'
import { asKnownAt, records } from '../../builders/records.ts'
import { card, suspension } from '../../builders/cards.ts'
import { adult, assignment, certificate, designation } from '../../builders/people.ts'
import { place, question, work } from '../../builders/work.ts'
import { answerAbout, daysOfNote, expectAnswer } from './expected.ts'

const CARD_ENDS = '2028-04-13'
const BOTH_KINDS: ('bucking' | 'felling')[] = ['bucking', 'felling']

describe('certificates and cards that run out', () => {
  const lapsing = [certificate('p-1', 'first-aid'), certificate('p-1', 'cpr', { lastDay: '2027-07-11' })]
  const base = records(
    adult('p-1', { certificates: lapsing, cards: [card('p-1', 'B', { workKinds: BOTH_KINDS })] }),
    adult('p-2', { cards: [card('p-2', 'C', { workKinds: BOTH_KINDS })] }),
    adult('p-3', { cards: [card('p-3', 'B')] }),
  )
  const felling = work({ workKind: 'felling', complexity: 'moderate', diameter: 22 })
  const asked = question(felling, '2027-07-08', '2027-07-15')

  it('[AU49] [AU10] [AU13] worked 1: CPR that lapses in the span ends the answer', () => {
    const answer = answerAbout(base, asked)
    expectAnswer(answer, asked, {
      standing: 'none',
      days: [
        ['independent', '2027-07-08', '2027-07-11'],
        ['none', '2027-07-12', '2027-07-15'],
      ],
      findings: [{ kind: 'certificate-lapsed', subject: 'cpr', lastDay: '2027-07-11' }],
      holdsThrough: '2027-07-11',
      endedBy: { day: '2027-07-12', standing: 'none', came: ['certificate-lapsed'], went: [] },
    })
    expect(answer.atLeastThrough).toBe('2027-07-11')
    expect(daysOfNote(answer, 'successor-not-held')).toEqual(['2027-07-08/2027-07-15'])
  })

  it('[AU75] [AU78] [AU79] worked 1: its remedies renew the CPR, move the date, or send somebody else', () => {
    expect(answerAbout(base, asked).remedies).toEqual({
      sets: [[{ kind: 'renew-certificate', subject: 'cpr', by: '2027-07-12' }]],
      somebodyElse: 1,
      anotherDate: { first: '2027-07-04', last: '2027-07-11' },
      leaveIt: true,
    })
  })

  const bucking = question(work({ complexity: 'moderate' }), '2027-07-08', '2027-07-15')
  const ending = card('p-1', 'B', { lastDay: '2027-07-10' })
  const next = (effectiveDay: string) =>
    card('p-1', 'B', { id: 'card-next', number: 'N-next', effectiveDay, lastDay: '2030-07-10' })

  it('[AU22] [AU13] worked 2: a day between two cards is a day without one', () => {
    const gap = records(adult('p-1', { cards: [ending, next('2027-07-12')] }))
    const answer = answerAbout(gap, bucking)
    expectAnswer(answer, bucking, {
      standing: 'none',
      days: [
        ['independent', '2027-07-08', '2027-07-10'],
        ['none', '2027-07-11', '2027-07-11'],
        ['independent', '2027-07-12', '2027-07-15'],
      ],
      findings: [{ kind: 'card-no-longer-valid', lastDay: '2027-07-10' }],
      holdsThrough: '2027-07-10',
      endedBy: { day: '2027-07-11', standing: 'none', came: ['card-no-longer-valid'], went: [] },
    })
    expect(daysOfNote(answer, 'successor-not-held')).toEqual(['2027-07-08/2027-07-15'])
  })

  it('[AU9] [AU27] worked 3: a renewal without a gap divides nothing', () => {
    const abutting = records(adult('p-1', { cards: [ending, next('2027-07-11')] }))
    const answer = answerAbout(abutting, bucking)
    expect(answer.spans).toHaveLength(1)
    expectAnswer(answer, bucking, { standing: 'independent', findings: [], holdsThrough: '2030-07-10' })
  })
})

describe('a card restricted to 24 inches', () => {
  const restricted = card('p-1', 'B', {
    restrictions: [{ id: 'width', kind: 'greatest-diameter', inches: 24 }],
  })
  const base = records(adult('p-1', { cards: [restricted] }))
  const trained = records(
    adult('p-1', {
      cards: [restricted],
      certificates: [certificate('p-1', 'first-aid'), certificate('p-1', 'cpr', { lastDay: '2027-06-05' })],
      assignments: [assignment('p-1', ['tree-1', 'tree-2'], ['p-2'])],
    }),
    adult('p-2', { designations: [designation('p-2')] }),
  )
  const tree = (item: string | undefined, diameter: number) =>
    question(work({ workKind: 'felling', diameter, ...(item === undefined ? {} : { item }) }), '2027-06-05')

  it('[AU28] worked 4: the limit itself is inside', () => {
    const asked = question(work({ complexity: 'moderate', diameter: 24 }), '2027-07-08')
    const answer = answerAbout(base, asked)
    expectAnswer(answer, asked, { standing: 'independent', findings: [], holdsThrough: CARD_ENDS })
    expect(daysOfNote(answer, 'successor-not-held')).toEqual(['2027-07-08/2027-07-08'])
  })

  it('[AU28] [AU77] worked 5: a sixteenth over is outside, and nothing eases a restriction', () => {
    const asked = question(work({ complexity: 'moderate', diameter: 24.0625 }), '2027-07-08')
    const answer = answerAbout(base, asked)
    expectAnswer(answer, asked, {
      standing: 'none',
      findings: [{ kind: 'over-diameter', limit: 24, diameter: 24.0625 }],
      holdsThrough: 'open',
    })
    expect(answer.remedies.sets).toEqual([])
  })

  it('[AU35] [AU49] worked 6: an assignment gives training beside a card that names other work', () => {
    const asked = tree('tree-1', 20)
    const answer = answerAbout(trained, asked)
    expectAnswer(answer, asked, {
      standing: 'training',
      findings: [{ kind: 'no-card', workKind: 'felling', sawKind: 'crosscut' }, 'training-only'],
      holdsThrough: '2027-06-05',
      endedBy: { day: '2027-06-06', standing: 'none' },
    })
    expect(daysOfNote(answer, 'successor-not-held')).toEqual(['2027-06-05/2027-06-05'])
  })

  it('[AU38] worked 7: the restrictions of the other card bind the training', () => {
    const asked = tree('tree-2', 26)
    expectAnswer(answerAbout(trained, asked), asked, {
      standing: 'none',
      findings: ['no-card', 'training-only', { kind: 'over-diameter', limit: 24, diameter: 26 }],
      holdsThrough: 'open',
    })
  })

  it('[AU36] worked 8: an assignment covers a named item alone', () => {
    const asked = tree(undefined, 20)
    expectAnswer(answerAbout(trained, asked), asked, {
      standing: 'none',
      findings: ['no-card'],
      holdsThrough: 'open',
    })
  })
})

describe('without a card for the work', () => {
  const learner = records(
    adult('p-1', { assignments: [assignment('p-1', ['log-1', 'log-2'], ['p-2'])] }),
    adult('p-2', { designations: [designation('p-2')] }),
  )

  it('[AU35] worked 9: an assignment gives training where there is no card at all', () => {
    const asked = question(work({ item: 'log-1' }), '2027-06-05')
    expectAnswer(answerAbout(learner, asked), asked, {
      standing: 'training',
      findings: [{ kind: 'no-card', workKind: 'bucking', sawKind: 'crosscut' }, 'training-only'],
      holdsThrough: '2027-06-05',
      endedBy: { day: '2027-06-06', standing: 'none' },
    })
  })

  it('[AU36] worked 10: above the complexity the book allows there is no training', () => {
    const asked = question(work({ item: 'log-2', complexity: 'moderate' }), '2027-06-05')
    expectAnswer(answerAbout(learner, asked), asked, {
      standing: 'none',
      findings: ['no-card'],
      holdsThrough: 'open',
    })
  })

  it('[AU1] [AU19] worked 11: the line for the work kind is the one that speaks', () => {
    const lines = [
      card('p-1', 'C', { number: 'N-7' }),
      card('p-1', 'B', { id: 'card-felling', number: 'N-7', line: 2, workKinds: ['felling'] }),
    ]
    const asked = question(work({ workKind: 'felling', complexity: 'high' }), '2027-07-08')
    expectAnswer(answerAbout(records(adult('p-1', { cards: lines })), asked), asked, {
      standing: 'training',
      findings: [{ kind: 'training-only', level: 'B', supervisor: 'C' }],
      holdsThrough: CARD_ENDS,
      endedBy: { day: '2028-04-14', standing: 'none' },
    })
  })

  it('[AU17] worked 12: a card of a book that is not recognised at the place', () => {
    const foreign = card('p-1', 'B', { book: 'cooperator-crosscut' })
    const federal = place('ridge', { books: [{ book: 'federal-crosscut', firstDay: '2016-07-19' }] })
    const asked = question(work({ place: 'ridge' }), '2027-07-08')
    expectAnswer(
      answerAbout(records(adult('p-1', { cards: [foreign] }), { places: [federal] }), asked),
      asked,
      {
        standing: 'none',
        findings: [{ kind: 'book-does-not-recognise', book: 'cooperator-crosscut', level: 'B' }],
        holdsThrough: 'open',
      },
    )
  })
})

describe('a stand-down that is entered late', () => {
  const entered = suspension('stand-down', { recordedIn: 12, firstDay: '2027-07-09' })
  const base = records(adult('p-1', { cards: [card('p-1', 'B')] }), { suspensions: [entered] })
  const asked = question(work(), '2027-07-08', '2027-07-10')

  it('[AU53] worked 13: it covers its days from the first, whenever it was entered', () => {
    const answer = answerAbout(base, asked)
    expectAnswer(answer, asked, {
      standing: 'none',
      days: [
        ['independent', '2027-07-08', '2027-07-08'],
        ['none', '2027-07-09', '2027-07-10'],
      ],
      findings: [{ kind: 'suspended', form: 'stand-down', because: 'unsafe-act', notice: 'not-recorded' }],
      holdsThrough: '2027-07-08',
      endedBy: { day: '2027-07-09', standing: 'none', came: ['suspended'], went: [] },
    })
    expect(answer.remedies.sets).toEqual([])
  })

  it('[AU53] worked 14: as known before it was entered it changes nothing', () => {
    expectAnswer(answerAbout(asKnownAt(base, 11), asked), asked, {
      standing: 'independent',
      findings: [],
      holdsThrough: CARD_ENDS,
      endedBy: { day: '2028-04-14', standing: 'none', came: ['card-no-longer-valid'], went: [] },
    })
  })
})
