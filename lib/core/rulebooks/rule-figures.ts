import type { Rule } from './rules.schema.ts'

/** One figure of a rule: its name as a path, `cells.least`, and its value as text, lists joined by commas. */
export type RuleFigure = { name: string; value: string }

/** The fields that every rule carries; what is left are its figures. */
const BASE: readonly string[] = ['id', 'kind', 'source', 'mark', 'says', 'disagrees']

/**
 * The figures of a rule, in the order of the book. A list of things with names is told by the name of each, so that
 * one that moves in its list is not a change.
 */
export function figuresOf(rule: Rule): RuleFigure[] {
  return Object.entries(rule).flatMap(([name, value]) => (BASE.includes(name) ? [] : flatten(name, value)))
}

function flatten(name: string, value: unknown): RuleFigure[] {
  if (Array.isArray(value)) {
    const items: readonly unknown[] = value
    if (!items.some((item) => typeof item === 'object')) return [{ name, value: items.join(', ') }]
    return items.flatMap((item, position) => flatten(`${name}.${nameIn(item) ?? position}`, item))
  }
  if (typeof value === 'object' && value !== null) {
    return Object.entries(value).flatMap(([deeper, inner]) => flatten(`${name}.${deeper}`, inner))
  }
  return [{ name, value: String(value) }]
}

/** The first text in a thing of a list is its name: an option, a book, a level. */
function nameIn(item: unknown): string | undefined {
  if (typeof item !== 'object' || item === null) return undefined
  const first: unknown = Object.values(item)[0]
  return typeof first === 'string' ? first : undefined
}
