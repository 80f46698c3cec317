import { toEpochDay } from '../calendar/dates.ts'
import { commonDays } from '../calendar/spans.ts'
import { stopsOn } from '../cards/suspensions.ts'
import { sortedTexts } from '../kernel/order.ts'
import type { Authority } from './authority-index.ts'
import type { Question } from './question.ts'

/**
 * The places in which the work is stopped on some day asked. A question without a place is not touched by them, so that
 * whoever asks without one must be told of them beside the answer.
 */
export function placesStopped(authority: Authority, { work, first, last }: Question): string[] {
  const span = { first: toEpochDay(first), last: toEpochDay(last) }
  const stopped = [...authority.placeSuspensions].filter(([, suspensions]) =>
    suspensions.some((suspension) => {
      const days = commonDays(suspension.days, span)
      return days !== undefined && stopsOn(suspension, days.first, work.workKind, work.sawKind)
    }),
  )
  return sortedTexts(stopped.map(([place]) => place))
}
