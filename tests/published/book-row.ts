import type { Mark } from '../../lib/core/rulebooks/words.ts'

/** One published (or remembered) value, and where a book holds it. */
export type BookRow = {
  fact: string
  /** The outside source, as the rule cites it. */
  source: string
  mark: Mark
  edition: string
  rule: string
  /** The figures of the rule that carry the value. */
  figures: Record<string, unknown>
}

/** The cells of a grant, as figures of a row. */
export function cells(least: string, moderate: string, high: string): Record<string, unknown> {
  return { cells: { least, moderate, high } }
}
