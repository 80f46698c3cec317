import type { DoubtFigures } from './problems.ts'
import type { Fact } from './sections.ts'

/** Takes a doubt about a fact. */
export type TellDoubt = (fact: Fact, figures: DoubtFigures) => void

/** How many names one doubt lists; the rest are counted. */
export const MOST_LISTED = 20

/** How many more there are than are listed; nothing where there are none. */
export function moreThan(listed: number, count: number): { more?: number } {
  return count > listed ? { more: count - listed } : {}
}
