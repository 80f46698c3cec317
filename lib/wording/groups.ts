import type { Answer } from '../core/authority/answer.ts'
import type { Standing } from '../core/rulebooks/standing.ts'
import { standingText } from './standings.ts'

/** The groups of an answer in the order in which they are read. */
export const GROUPS = [
  'independent',
  'own-level',
  'training',
  'unknown',
  'none',
] as const satisfies readonly Standing[]

/** What a group is called: its standing, and of a no that its reasons follow. */
export function groupText(standing: Standing, supervisors: readonly string[]): string {
  return standing === 'none' ? 'no, and why' : standingText(standing, supervisors)
}

/** How many may do the work on some of the days, on their own or supervised. */
export function partlyCount(answers: readonly Pick<Answer, 'spans'>[]): number {
  return answers.filter(({ spans }) =>
    spans.some((span) => span.standing !== 'none' && span.standing !== 'unknown'),
  ).length
}

/** How many of those whose answer is no may do the work on some of the days; empty where there are none. */
export function partlyText(standing: Standing, partly: number): string {
  return standing !== 'none' || partly === 0 ? '' : `${partly} of them on some of the days`
}
