import type { Program } from '../../lib/core/program/program.schema.ts'
import { SECTION_NAMES, type Fact } from '../../lib/core/program/sections.ts'
import { TABLES } from '../../lib/store/tables/all.ts'

/**
 * A generated history without the records that name what is not known by then, which no check of a file would let
 * through either: they go with all their versions, until nothing more has to.
 */
export function settled(program: Program): Program {
  const known = new Map<string, number>()
  for (const section of SECTION_NAMES) {
    for (const { id, recordedIn } of program[section] as readonly Fact[]) {
      const key = `${keyOf(section)} ${id}`
      known.set(key, Math.min(recordedIn, known.get(key) ?? recordedIn))
    }
  }
  const settle = SECTION_NAMES.map((section) => {
    const facts: readonly Fact[] = program[section]
    const references = TABLES[section].columns.flatMap((column) =>
      column.kind === 'record' ? [{ field: column.field, to: column.to }] : [],
    )
    const unsettled = new Set(
      facts
        .filter((fact) =>
          references.some(({ field, to }) => {
            const id = (fact as Readonly<Record<string, unknown>>)[field]
            return typeof id === 'string' && (known.get(`${keyOf(to)} ${id}`) ?? Infinity) > fact.recordedIn
          }),
        )
        .map(({ id }) => id),
    )
    return [section, facts.filter(({ id }) => !unsettled.has(id)), unsettled.size] as const
  })
  const smaller = { ...program, ...Object.fromEntries(settle.map(([section, facts]) => [section, facts])) }
  return settle.some(([, , gone]) => gone > 0) ? settled(smaller) : smaller
}

/** Items and expected work are named alike. */
function keyOf(section: string): string {
  return section === 'expectedWork' ? 'items' : section
}
