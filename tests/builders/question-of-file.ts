import type { Work } from '../../lib/core/authority/answer.ts'
import { workOfItem, type openRecords } from '../../lib/core/authority/ask.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { AskedQuestion } from '../../lib/usecases/authority/question.schema.ts'
import { DEMO_TODAY } from './test-runtime.ts'

/** The question as the core takes it; nothing where the item or the place was not on record then. */
export function questionOfFile(
  authority: ReturnType<typeof openRecords>,
  asked: AskedQuestion,
): Question | undefined {
  const today = DEMO_TODAY as CalendarDate
  if (!('item' in asked.work)) {
    const work: Work = asked.work
    const isKnown = work.place === undefined || authority.records.places.some(({ id }) => id === work.place)
    return isKnown ? { work, first: asked.first!, last: asked.last!, today } : undefined
  }
  const own = workOfItem(authority, asked.work.item, asked.work.sawKind)
  if (own === undefined) return undefined
  return { work: own.work, first: asked.first ?? own.first!, last: asked.last ?? own.last!, today }
}

/** Answers stand in the order in which people are on record, which a file and a database need not share. */
export function byPerson<Kind extends { person: string }>(answers: readonly Kind[]): Kind[] {
  return [...answers].sort((left, right) => left.person.localeCompare(right.person))
}
