import { foldedHeading } from './sheet.ts'
import { SHEET_FIELDS } from './sheet-fields.ts'
import type { SheetKind } from './sheet-kinds.ts'

/** For each field of a kind that has one: the heading of its column. */
export type ColumnMap = Readonly<Record<string, string>>

/**
 * Proposes which column is which: by label, then by the other headings under which a field is found; no column and no
 * field is taken twice.
 */
export function proposedColumns(kind: SheetKind, head: readonly string[]): ColumnMap {
  const left = new Map(head.map((heading) => [foldedHeading(heading), heading]))
  const found: Record<string, string> = {}
  const take = (key: string, folded: string) => {
    const heading = left.get(folded)
    if (heading === undefined || Object.hasOwn(found, key)) return
    found[key] = heading
    left.delete(folded)
  }
  const fields = SHEET_FIELDS[kind]
  for (const { key, label } of fields) take(key, foldedHeading(label))
  // A sheet of ours may have been written by the names of a map.
  for (const { key } of fields) take(key, foldedHeading(key))
  for (const { key, also } of fields) for (const other of also) take(key, foldedHeading(other))
  return found
}
