import { nearestName } from '../core/kernel/nearest-name.ts'
import type { Result } from '../core/kernel/result.ts'
import { joinedByOr } from '../wording/lists.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'

/** How many names are compared for a suggestion. */
const MOST_COMPARED = 20_000

/**
 * The id that somebody means by an id or an exact name. A name that several share is refused with their ids; what
 * nothing is called is refused with the nearest id or name.
 */
export function lookUp(
  noun: string,
  typed: string,
  facts: readonly { id: string; name: string }[],
): Result<string, Refusal> {
  if (facts.some((fact) => fact.id === typed)) return { ok: true, value: typed }
  const named = [...new Set(facts.filter((fact) => fact.name === typed).map((fact) => fact.id))]
  const only = named[0]
  if (only !== undefined && named.length === 1) return { ok: true, value: only }
  if (named.length > 1) {
    return refused(
      `Several are called “${printableLine(typed)}”. Say which ${noun} by the id: ${joinedByOr(named)}.`,
    )
  }
  const compared = facts.slice(0, MOST_COMPARED)
  const nearest = nearestName(typed, [
    ...compared.map((fact) => fact.id),
    ...compared.map((fact) => fact.name),
  ])
  const suggestion = nearest === undefined ? '' : ` Is “${printableLine(nearest)}” meant?`
  return refused(`No ${noun} on record has the id or name “${printableLine(typed)}”.${suggestion}`)
}
