import type { MatrixItem } from '../../lib/core/authority/matrix.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { plainAnswer } from '../plain/answer.ts'
import { groupedBy } from './grouped-by.ts'
import { SEASON_FIRST } from './season.ts'

/** What the plain version answers of a person and an item. */
export type PlainAnswers = (person: string, item: MatrixItem) => ReturnType<typeof plainAnswer>

/**
 * The plain version over a big program. It searches whole sections for every fact and would pay for everybody's; so it
 * is given the facts that bear on the pair, cut out beforehand.
 */
export function plainAnswers(records: Records, isTimed: (milliseconds: number) => void): PlainAnswers {
  const by = {
    memberships: groupedBy(records.memberships, ({ person }) => person),
    permissions: groupedBy(records.permissions, ({ person }) => person),
    certificates: groupedBy(records.certificates, ({ person }) => person),
    designations: groupedBy(records.designations, ({ person }) => person),
    assignments: groupedBy(records.assignments, ({ person }) => person),
    cards: groupedBy(records.cards, ({ person }) => person),
    people: groupedBy(records.people, ({ id }) => id),
    endings: groupedBy(records.endings, ({ card }) => card),
    resolutions: groupedBy(records.resolutions, ({ card }) => card),
    lifts: groupedBy(records.lifts, ({ suspension }) => suspension),
    ratings: groupedBy(records.ratings, ({ item }) => item),
    raises: groupedBy(records.raises, ({ item }) => item),
    items: groupedBy(records.items, ({ id }) => id),
    expectedWork: groupedBy(records.expectedWork, ({ id }) => id),
  }
  const slice = (person: string, item: string): Records => {
    const ratings = by.ratings.get(item) ?? []
    const trainers = (by.assignments.get(person) ?? []).flatMap((assignment) => assignment.trainers)
    const ids = [...new Set([person, ...ratings.map(({ rater }) => rater), ...trainers])]
    const ofIds = <Fact>(facts: ReadonlyMap<string, Fact[]>) => ids.flatMap((id) => facts.get(id) ?? [])
    const cards = ofIds(by.cards)
    const numbers = new Set(cards.map(({ number }) => number))
    const suspensions = records.suspensions.filter(({ subject }) => {
      if (subject.kind === 'person') return ids.includes(subject.person)
      return subject.kind !== 'card' || numbers.has(subject.number)
    })
    return {
      ...records,
      people: ofIds(by.people),
      memberships: ofIds(by.memberships),
      permissions: ofIds(by.permissions),
      certificates: ofIds(by.certificates),
      designations: ofIds(by.designations),
      assignments: ofIds(by.assignments),
      cards,
      endings: cards.flatMap(({ id }) => by.endings.get(id) ?? []),
      resolutions: cards.flatMap(({ id }) => by.resolutions.get(id) ?? []),
      suspensions,
      lifts: suspensions.flatMap(({ id }) => by.lifts.get(id) ?? []),
      items: by.items.get(item) ?? [],
      expectedWork: by.expectedWork.get(item) ?? [],
      ratings,
      raises: by.raises.get(item) ?? [],
    }
  }
  return (person, { work, first, last }) => {
    const question: Question = { work, first, last, today: SEASON_FIRST }
    const facts = slice(person, work.item ?? '')
    const from = performance.now()
    const answer = plainAnswer(facts, question, person)
    isTimed(performance.now() - from)
    return answer
  }
}
