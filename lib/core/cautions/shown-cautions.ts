import type { Rule } from '../rulebooks/rules.schema.ts'
import type { Complexity, WorkKind } from '../rulebooks/words.ts'

/** The cautions that stand beside an answer, in order, and the ids that a rule names and the record lacks. */
export type ShownCautions<Caution> = { cautions: readonly Caution[]; missing: readonly string[] }

/**
 * Which cautions stand beside a kind of work: rule after rule in the order of the book, each caution once. Work that
 * nobody has rated shows those of every complexity.
 */
export function shownCautions<Caution extends { id: string }>(
  rules: readonly Rule[],
  cautions: readonly Caution[],
  workKind: WorkKind,
  complexity: Complexity | 'not-rated',
): ShownCautions<Caution> {
  const named = new Set<string>()
  for (const rule of rules) {
    if (rule.kind !== 'cautions.shown' || !rule.workKinds.includes(workKind)) continue
    if (complexity !== 'not-rated' && !rule.complexities.includes(complexity)) continue
    for (const caution of rule.cautions) named.add(caution)
  }
  const known = new Map(cautions.map((caution) => [caution.id, caution]))
  return {
    cautions: [...named].flatMap((id) => known.get(id) ?? []),
    missing: [...named].filter((id) => !known.has(id)),
  }
}
