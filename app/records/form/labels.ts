import type { FieldLabels } from '../../_door/form-outcome.ts'
import { isLeaf, rowCount, type FormParts, type Leaf } from './parts.ts'

/** The labels of all fields of a form, by name and in the order in which they stand. */
export function labelsOf(
  parts: FormParts,
  prefix: string,
  values: Readonly<Record<string, string>>,
): FieldLabels {
  const entries = parts.flatMap((part): (readonly [string, string])[] => {
    if (isLeaf(part)) return [[`${prefix}.${part.path}`, part.label]]
    const base = `${prefix}.${part.path}`
    if (part.kind === 'group') return part.leaves.map((leaf) => labelled(leaf, base, part.label))
    if (part.kind === 'one-of')
      return [
        [`${base}.kind`, part.label],
        ...part.ways.flatMap((way) =>
          way.leaves.map((leaf) => labelled(leaf, `${base}.${way.value}`, part.label)),
        ),
      ]
    return [
      ...Array.from({ length: rowCount(values, prefix, part) }, (_each, at) =>
        part.leaves.map((leaf) => labelled(leaf, `${base}.${at}`, `${part.label} ${at + 1}`)),
      ).flat(),
      [base, part.label],
    ]
  })
  return Object.fromEntries(entries)
}

function labelled({ path, label }: Leaf, base: string, of: string): readonly [string, string] {
  return [`${base}.${path}`, `${of}, ${label.toLowerCase()}`]
}
