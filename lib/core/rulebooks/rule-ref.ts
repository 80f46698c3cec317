import type { Mark } from './words.ts'

/** A rule as an answer names it. `edition` is empty where no edition governs the day. */
export type RuleRef = { edition: string; rule: string; source: string; mark: Mark }
