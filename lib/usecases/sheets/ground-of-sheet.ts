import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { Instant } from '../../core/calendar/instants.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { figureEvidence } from '../../core/sheets/figure-days.ts'
import { SHEET_FIELDS } from '../../core/sheets/sheet-fields.ts'
import type { SheetField, SheetKind } from '../../core/sheets/sheet-kinds.ts'
import type { Sheet, SheetRow } from '../../core/sheets/sheet.ts'
import type { Hand } from '../records/by-hand.ts'
import { onRecordAt, type OnRecord } from './on-record.ts'
import type { RowMatch, SheetPlan } from './plan.ts'
import type { CellGround } from './read-cell.ts'
import type { SheetSettings } from './settings.schema.ts'

/** How far somebody who brings in a sheet reaches. */
export type SheetReach = {
  person: (id: string) => boolean
  belongs: (to: { organisation: string; unit?: string }) => boolean
  /** Work in no place belongs to the program. */
  place: (id: string | undefined) => boolean
  /** Whether they see a birth date that is on record. */
  birthDate: (person: string) => boolean
}

export type PlanInput = {
  kind: SheetKind
  sheet: Sheet
  settings: SheetSettings
  program: Program
  n: number
  now: Instant
  today: CalendarDate
  hand: Hand
  reach: SheetReach
  /** Called between rows, so that whoever waits may be told and others are served. */
  pause?: (phase: 'rows' | 'together', done: number) => Promise<void>
}

/** A field of a sheet with where its cells stand: in a column, or one text for every row. */
export type Column = { field: SheetField; heading: string | undefined; cell: (row: SheetRow) => string }

/** Everything that rows are planned with; what they claim and whom they match is kept in it from row to row. */
export type Ground = {
  input: PlanInput
  record: OnRecord
  columns: readonly Column[]
  cells: CellGround
  days: SheetPlan['days']
  missing: readonly SheetField[]
  matches: Map<string, OpenMatch>
  /** By what no two rows may both say: the row that says it, and how. */
  claimed: Map<string, { row: number; content: string }>
}

/** A match while rows are still added to it. */
export type OpenMatch = { -readonly [Key in keyof RowMatch]: RowMatch[Key] } & { newId: string }

/** Looks up what is on record and which column is which. */
export function groundOf(input: PlanInput): Ground {
  const { kind, sheet, settings, program, n, today } = input
  const record = onRecordAt(program, n)
  const columns = SHEET_FIELDS[kind].flatMap((field): Column[] => {
    const heading = settings.columns[field.key]
    const at = heading === undefined ? -1 : sheet.head.indexOf(heading)
    if (at !== -1) return [{ field, heading, cell: ({ cells }) => cells[at] ?? '' }]
    const everyRow = settings.everyRow?.[field.key]?.trim() ?? ''
    return everyRow === '' ? [] : [{ field, heading: undefined, cell: () => everyRow }]
  })
  const dated = columns.filter(
    ({ field, heading }) => heading !== undefined && ['day', 'last-day'].includes(field.reads.kind),
  )
  const days = figureEvidence(dated.flatMap(({ cell }) => sheet.rows.map(cell)))
  const has = (key: string) => columns.some(({ field }) => field.key === key)
  const isFound = has('person.number') || (kind === 'items' && has('id'))
  return {
    ...{ input, record, columns, days },
    cells: { list: record.list, order: settings.days, today },
    // A row that names a record by its number may say what is to change alone.
    missing: isFound ? [] : SHEET_FIELDS[kind].filter(({ key, needed }) => needed === true && !has(key)),
    matches: new Map(),
    claimed: new Map(),
  }
}
