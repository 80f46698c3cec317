import { card, suspension } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import type { Part } from '../../builders/records.ts'

/** What a test says of a suspension; the rest is a stand-down of p-1 for an unsafe act from 9 July 2027. */
export type Said = NonNullable<Parameters<typeof suspension>[1]>

/** p-1 with a card of level B for both work kinds, and what is said beside it. */
export function holder(said: Part = {}): Part {
  return adult('p-1', { cards: [card('p-1', 'B', { workKinds: ['bucking', 'felling'] })], ...said })
}

/** One suspension. */
export function stop(said: Said = {}): Part {
  return { suspensions: [suspension('stop', said)] }
}

/** The finding of a suspension, as a line. */
export function suspended(
  notice: 'before' | 'after' | 'not-recorded',
  because = 'unsafe-act',
  form = 'stand-down',
): string {
  return `suspended because=${because} form=${form} notice=${notice} | suspension | none`
}

/** The finding of a stand-down without notice on record. */
export const SUSPENDED = suspended('not-recorded')
