import type { FieldProblem } from '../../../lib/usecases/door/outcome.ts'
import type { RecordChoices } from '../../../lib/usecases/records/record-choices.ts'
import { typedText } from '../../_door/form-outcome.ts'
import { isLeaf, rowCount, type FormParts, type Group, type Leaf, type OneOf, type Rows } from './parts.ts'
import { readLeaf } from './read-leaf.ts'
import { readRestriction } from './restriction-rows.ts'

/** What was typed as the fields of a record, and what of it cannot be read. */
export type TypedFields = {
  fields: Readonly<Record<string, unknown>>
  problems: readonly FieldProblem[]
  /** Where a problem of the record is told in the form: rows that were left empty are not in the record. */
  place: (path: string) => string
}

type Held = Record<string, unknown>

/** Reads what was typed into a form as the fields of its record; what is left empty is left out. */
export function readTypedFields(
  parts: FormParts,
  typed: FormData,
  prefix: string,
  choices: RecordChoices,
): TypedFields {
  const reader = new FormReader(typed, prefix, choices)
  for (const part of parts) {
    if (isLeaf(part)) reader.leaf(part)
    else if (part.kind === 'group') reader.group(part)
    else if (part.kind === 'rows') reader.rows(part)
    else reader.oneOf(part)
  }
  return { fields: reader.fields, problems: reader.problems, place: (path) => reader.place(path) }
}

class FormReader {
  readonly fields: Held = {}
  readonly problems: FieldProblem[] = []
  /** The names of all fields of the form. */
  private readonly names = new Set<string>()
  /** For a field of rows, in which row of the form each row of the record was typed. */
  private readonly typedRows = new Map<string, number[]>()
  /** Fields of a record that the form asks together, by the field that asks them. */
  private readonly together = new Map<string, string>()

  constructor(
    private readonly typed: FormData,
    private readonly prefix: string,
    private readonly choices: RecordChoices,
  ) {}

  leaf(leaf: Leaf): void {
    this.into(this.fields, leaf, `${this.prefix}.${leaf.path}`)
  }

  group({ path, leaves }: Group): void {
    const held = this.all(leaves, `${this.prefix}.${path}`)
    if (Object.keys(held).length > 0) this.fields[path] = held
  }

  rows(rows: Rows): void {
    const base = `${this.prefix}.${rows.path}`
    const texts = Object.fromEntries(
      [...this.typed].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
    )
    const filled: unknown[] = []
    const typedAt: number[] = []
    for (let at = 0; at < rowCount(texts, this.prefix, rows); at++) {
      const name = `${base}.${at}`
      const row =
        rows.are === 'restrictions' ? this.restriction(rows.leaves, name) : this.all(rows.leaves, name)
      if (Object.keys(row).length === 0) continue
      filled.push(row)
      typedAt.push(at)
    }
    this.typedRows.set(base, typedAt)
    this.names.add(base)
    if (filled.length > 0 || rows.are === 'restrictions') this.fields[rows.path] = filled
  }

  oneOf({ path, ways }: OneOf): void {
    const base = `${this.prefix}.${path}`
    this.names.add(`${base}.kind`)
    const chosen = ways.find(({ value }) => value === typedText(this.typed, `${base}.kind`))
    if (chosen === undefined) return
    this.fields[path] = { kind: chosen.value, ...this.all(chosen.leaves, `${base}.${chosen.value}`) }
    for (const { path: each } of chosen.leaves)
      this.together.set(`${base}.${each}`, `${base}.${chosen.value}.${each}`)
  }

  /** The field of the form at which a problem of the record is told: itself, or the nearest that holds it. */
  place(path: string): string {
    let here = this.inForm(path)
    while (here !== '') {
      if (this.names.has(here)) return here
      if (this.names.has(`${here}.says`)) return `${here}.says`
      if (this.names.has(`${here}.kind`)) return `${here}.kind`
      here = here.includes('.') ? here.slice(0, here.lastIndexOf('.')) : ''
    }
    return ''
  }

  private inForm(path: string): string {
    const known = this.together.get(path)
    if (known !== undefined) return known
    for (const [base, rows] of this.typedRows) {
      if (!path.startsWith(`${base}.`)) continue
      const [at, ...rest] = path.slice(base.length + 1).split('.')
      return [base, rows[Number(at)] ?? at, ...rest].join('.')
    }
    return path
  }

  private all(leaves: readonly Leaf[], base: string): Held {
    const held: Held = {}
    for (const leaf of leaves) this.into(held, leaf, `${base}.${leaf.path}`)
    return held
  }

  private into(held: Held, leaf: Leaf, name: string): void {
    this.names.add(name)
    const read = readLeaf(leaf, name, this.typed, this.choices)
    if (!read.ok) {
      this.problems.push({ path: name, message: read.problem })
      return
    }
    if (read.value === undefined) return
    if (leaf.kind !== 'one' || leaf.parts === undefined) {
      held[leaf.path] = read.value
      return
    }
    const values = typeof read.value === 'string' ? read.value.split(' ') : []
    leaf.parts.forEach((part, at) => {
      held[part] = values[at]
      this.together.set(`${this.prefix}.${part}`, name)
    })
  }

  private restriction(leaves: readonly Leaf[], name: string): Held {
    const row = this.all(leaves, name)
    const read = readRestriction(row, typedText(this.typed, `${name}.id`), this.choices)
    if (read.ok) return read.value
    this.problems.push({ path: `${name}.says`, message: read.problem })
    return row
  }
}
