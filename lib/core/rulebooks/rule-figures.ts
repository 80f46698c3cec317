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

/** By which of its fields a thing of a list is named; the order of its fields says nothing, a database keeps its own. */
const NAMED_BY: readonly string[] = ['option', 'book', 'theirs']

function nameIn(item: unknown): string | undefined {
  if (typeof item !== 'object' || item === null) return undefined
  const fields = Object.entries(item) as [string, unknown][]
  const name = fields.find(([field]) => NAMED_BY.includes(field))?.[1]
  return typeof name === 'string' ? name : undefined
}
