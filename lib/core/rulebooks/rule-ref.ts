import type { Mark } from './words.ts'

/** A rule of an edition as an answer names it, by their ids. */
export type RuleRef = { edition: string; rule: string; source: string; mark: Mark }
