import { describe, expect, it } from 'vitest'
import { openRecords } from '../../../lib/core/authority/authority-index.ts'
import { workOfItem } from '../../../lib/core/authority/ask.ts'
import { expectedWorkSchema } from '../../../lib/core/work/work.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import { asKnownAt, records, type Part } from '../../builders/records.ts'
import { item, question, raise, rating, work } from '../../builders/work.ts'
import { answerAbout, notesOf } from './told.ts'

type RatingSaid = NonNullable<Parameters<typeof rating>[4]>
type RaiseSaid = NonNullable<Parameters<typeof raise>[4]>
type Complexity = 'least' | 'moderate' | 'high'

/** An A, in whose standing the planned complexity of log 1 can be read, and raters of three levels. */
const people: Part[] = [
  adult('p-1', { cards: [card('p-1', 'A')] }),
  adult('a', { cards: [card('a', 'A')] }),
  adult('b', { cards: [card('b', 'B')] }),
  adult('c', { cards: [card('c', 'C')] }),
  adult('narrow', {
    cards: [card('narrow', 'C', { restrictions: [{ id: 'w', kind: 'greatest-diameter', inches: 19 }] })],
  }),
  adult('ended', { cards: [card('ended', 'C', { lastDay: '2027-07-08' })] }),
  { items: [item('log-1')] },
]

const PLANNED = {
  'own-level': 'least',
  training: 'moderate',
  none: 'high',
  unknown: 'not rated',
  independent: 'least',
}

const rated = (
  complexity: Complexity | 'not-rated',
  by: string,
  day: string,
  said: RatingSaid = {},
): Part => ({
  ratings: [rating('log-1', complexity, by, day, { id: `rating-${complexity}-${by}-${day}`, ...said })],
})
const raised = (complexity: Complexity, day: string, said: RaiseSaid = {}): Part => ({
  raises: [raise('log-1', complexity, 'a', day, said)],
})

const asked = (first: string, last = first) =>
  question(work({ item: 'log-1', notStated: ['complexity'] }), first, last)

/** What log 1 is planned as, by runs of days: `least 8-9`. */
function planned(facts: readonly Part[], first = '2027-07-08', last = '2027-07-10'): string[] {
  const answer = answerAbout(records(...people, ...facts), asked(first, last))
  return answer.spans.map(
    (span) => `${PLANNED[span.standing]} ${Number(span.first.slice(8))}-${Number(span.last.slice(8))}`,
  )
}

describe('ratings one after another', () => {
  it.each<[string, Part[], string[]]>([
    ['the first covers all days', [rated('least', 'c', '2027-07-09')], ['least 8-10']],
    [
      'a higher one later covers all days',
      [rated('least', 'c', '2027-07-01'), rated('moderate', 'c', '2027-07-09')],
      ['moderate 8-10'],
    ],
    [
      'so does one by somebody of lower level',
      [rated('least', 'c', '2027-07-01'), rated('high', 'a', '2027-07-09')],
      ['high 8-10'],
    ],
    [
      'a lower one by somebody independent, from its own day',
      [rated('moderate', 'c', '2027-07-01'), rated('least', 'b', '2027-07-09')],
      ['moderate 8-8', 'least 9-10'],
    ],
    [
      'a lower one by somebody not independent at the higher class',
      [rated('high', 'c', '2027-07-01'), rated('least', 'b', '2027-07-09')],
      ['high 8-10'],
    ],
    [
      // Planned one class higher, what a photo shows would be moderate: it takes no place at all.
      'a lower one by photo',
      [rated('high', 'c', '2027-07-01'), rated('least', 'c', '2027-07-09', { how: 'photo' })],
      ['high 8-10'],
    ],
    [
      'a lower one that was told',
      [rated('high', 'c', '2027-07-01'), rated('least', 'c', '2027-07-09', { how: 'told' })],
      ['high 8-10'],
    ],
    [
      'a lower one by somebody who may not do this very log',
      [rated('moderate', 'c', '2027-07-01'), rated('least', 'narrow', '2027-07-09')],
      ['moderate 8-10'],
    ],
    [
      'a lower one on the last day of the card',
      [rated('moderate', 'c', '2027-07-01'), rated('least', 'ended', '2027-07-08')],
      ['least 8-10'],
    ],
    [
      'a lower one the day after',
      [rated('moderate', 'c', '2027-07-01'), rated('least', 'ended', '2027-07-09')],
      ['moderate 8-10'],
    ],
    [
      'not rated takes no place',
      [rated('moderate', 'c', '2027-07-01'), rated('not-rated', 'c', '2027-07-09')],
      ['moderate 8-10'],
    ],
    ['not rated alone is unrated', [rated('not-rated', 'c', '2027-07-01')], ['not rated 8-10']],
    ['nothing on record is unrated', [], ['not rated 8-10']],
    [
      'of one day, in the order of the entries',
      [
        rated('moderate', 'c', '2027-07-09', { recordedIn: 2 }),
        rated('least', 'c', '2027-07-09', { recordedIn: 3 }),
      ],
      ['moderate 8-8', 'least 9-10'],
    ],
    [
      'of one day, the other way round',
      [
        rated('moderate', 'c', '2027-07-09', { recordedIn: 3 }),
        rated('least', 'c', '2027-07-09', { recordedIn: 2 }),
      ],
      ['moderate 8-10'],
    ],
    [
      'it ends the raises made before',
      [rated('least', 'c', '2027-07-01'), raised('high', '2027-07-02'), rated('least', 'c', '2027-07-09')],
      ['high 8-8', 'least 9-10'],
    ],
    [
      'and those made on its own day',
      [rated('least', 'c', '2027-07-01'), raised('high', '2027-07-09'), rated('least', 'c', '2027-07-09')],
      ['high 8-8', 'least 9-10'],
    ],
    [
      'not those made after',
      [rated('least', 'c', '2027-07-01'), rated('least', 'c', '2027-07-09'), raised('high', '2027-07-10')],
      ['high 8-10'],
    ],
    [
      'not where the rater is not independent at the class of the raise',
      [rated('least', 'c', '2027-07-01'), raised('high', '2027-07-02'), rated('least', 'b', '2027-07-09')],
      ['high 8-10'],
    ],
  ])('[AU57] %s', (_name, facts, days) => {
    expect(planned(facts)).toEqual(days)
  })
})

describe('provisional ratings', () => {
  const note = (because: string, from: Complexity, to: Complexity, first: string, last = first) =>
    `rating-provisional because=${because} planned=${to} rated=${from} | complexity.provisional | ${first}/${last}`

  it.each<[string, Part, string, string | undefined]>([
    ['on site by somebody independent', rated('least', 'b', '2027-07-01'), 'least', undefined],
    ['by photo', rated('least', 'c', '2027-07-01', { how: 'photo' }), 'moderate', 'photo'],
    ['told', rated('moderate', 'c', '2027-07-01', { how: 'told' }), 'high', 'told'],
    [
      'by somebody not independent at the class',
      rated('least', 'a', '2027-07-01'),
      'moderate',
      'rater-not-independent',
    ],
    [
      'by somebody who is not on record',
      rated('least', 'nobody', '2027-07-01'),
      'moderate',
      'rater-not-independent',
    ],
    [
      'by somebody who may not do this very log',
      rated('least', 'narrow', '2027-07-01'),
      'moderate',
      'rater-not-independent',
    ],
    ['high stays high', rated('high', 'b', '2027-07-01'), 'high', 'rater-not-independent'],
    ['180 days old', rated('least', 'c', '2027-01-09'), 'least', undefined],
    ['181 days old', rated('least', 'c', '2027-01-08'), 'moderate', 'old'],
    [
      'every reason is told',
      rated('least', 'a', '2027-01-08', { how: 'photo' }),
      'moderate',
      'photo+rater-not-independent+old',
    ],
  ])('[AU58] %s', (_name, facts, to, because) => {
    const answer = answerAbout(records(...people, facts), asked('2027-07-08'))
    const from = facts.ratings?.[0]?.complexity
    expect(PLANNED[answer.standing]).toBe(to)
    const expected =
      because === undefined ? [] : [note(because, from as Complexity, to as Complexity, '2027-07-08')]
    expect(notesOf(answer)).toEqual(expected)
  })

  it('[AU58] what the rater was is asked with the records known to the question', () => {
    const late = adult('late', { cards: [card('late', 'C', { recordedIn: 5 })] })
    const base = records(...people, late, rated('least', 'late', '2027-07-01', { recordedIn: 3 }))
    const at = (n: number) => PLANNED[answerAbout(asKnownAt(base, n), asked('2027-07-08')).standing]
    expect([at(2), at(3), at(4), at(5)]).toEqual(['not rated', 'moderate', 'moderate', 'least'])
  })
})

describe('raises', () => {
  const least = rated('least', 'c', '2027-07-01')
  it.each<[string, Part[], string[]]>([
    ['all days, where it names no first', [least, raised('moderate', '2027-07-09')], ['moderate 8-10']],
    [
      'from the first it names',
      [least, raised('moderate', '2027-07-02', { firstDay: '2027-07-09' })],
      ['least 8-8', 'moderate 9-10'],
    ],
    [
      'the greatest of planned rating and raises',
      [rated('least', 'c', '2027-07-01', { how: 'told' }), raised('high', '2027-07-02')],
      ['high 8-10'],
    ],
    [
      'a lower raise changes nothing',
      [rated('moderate', 'c', '2027-07-01'), raised('least', '2027-07-02')],
      ['moderate 8-10'],
    ],
    ['unrated and raised to moderate is unrated', [raised('moderate', '2027-07-02')], ['not rated 8-10']],
    ['unrated and raised to high is high', [raised('high', '2027-07-02')], ['high 8-10']],
  ])('[AU59] %s', (_name, facts, days) => {
    expect(planned(facts)).toEqual(days)
  })

  it('[AU59] a raise is never provisional, whoever made it', () => {
    const base = records(
      ...people,
      rated('least', 'c', '2027-07-01'),
      raised('moderate', '2027-07-02', { by: 'nobody' }),
    )
    const answer = answerAbout(base, asked('2027-07-08'))
    expect([PLANNED[answer.standing], notesOf(answer)]).toEqual(['moderate', []])
  })
})

describe('as stated', () => {
  it('[AU60] a complexity typed into the question is asked as stated, whatever the ratings say', () => {
    const base = records(...people, rated('high', 'nobody', '2020-01-01', { how: 'told' }))
    const answer = answerAbout(base, question(work({ item: 'log-1', complexity: 'least' }), '2027-07-08'))
    expect([answer.standing, notesOf(answer)]).toEqual(['own-level', []])
  })

  it('[AU60] so is expected work', () => {
    const expected = expectedWorkSchema.parse({
      id: 'usual',
      recordedIn: 1,
      name: 'Invented usual case',
      workKind: 'bucking',
      diameter: 18,
      least: 4,
      most: 9,
      complexity: 'moderate',
    })
    const base = records(...people, { expectedWork: [expected] })
    const asStated = workOfItem(openRecords(base), 'usual', 'crosscut')
    expect(asStated?.work).toMatchObject({
      item: 'usual',
      complexity: 'moderate',
      diameter: 18,
      hands: 'two',
    })
    if (asStated === undefined) return
    const answer = answerAbout(
      base,
      question({ ...asStated.work, diameter: asStated.work.diameter }, '2027-07-08'),
    )
    expect([answer.standing, notesOf(answer)]).toEqual(['training', []])
  })
})
