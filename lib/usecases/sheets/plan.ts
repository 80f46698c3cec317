import type { FigureEvidence } from '../../core/sheets/figure-days.ts'
import type { SheetField, SheetKind } from '../../core/sheets/sheet-kinds.ts'
import type { FactToBring } from '../program/merged-program.ts'
import type { RecordSection } from '../records/record-kinds.ts'
import type { Meant } from './settings.schema.ts'

/** What would become of a row: `asked` waits for who is meant by it. */
export const ROW_STATUSES = ['add', 'change', 'same', 'asked', 'cannot', 'left-out'] as const
export type RowStatus = (typeof ROW_STATUSES)[number]

/** One cell as it is on record, where it is, and as it would be. */
export type PlannedCell = { key: string; label: string; before?: string; after: string }

/** Why a row cannot be brought in, at a column where it is one's. */
export type RowReason = { heading?: string; message: string }

/** A row with what would become of it. */
export type PlannedRow = {
  number: number
  status: RowStatus
  /** Whom or what it is about, as people call it. */
  title: string
  /** Who on record it is about. */
  person?: string
  cells: readonly PlannedCell[]
  reasons: readonly RowReason[]
}

/** Rows of one name, and whom on record they may be about. */
export type RowMatch = {
  /** The number of the first of these rows; the answer is kept under it. */
  row: number
  rows: readonly number[]
  /** What stands in the columns by which somebody is found. */
  typed: string
  candidates: readonly { id: string; name: string; says: string }[]
  answered?: Meant
}

/** A fact that would be recorded, and the row that says it. */
export type PlannedFact = FactToBring & { section: RecordSection; row: number }

/** What bringing in a sheet would do, row by row. Nothing of it is written. */
export type SheetPlan = {
  kind: SheetKind
  rows: readonly PlannedRow[]
  matches: readonly RowMatch[]
  facts: readonly PlannedFact[]
  counts: Readonly<Record<RowStatus, number>>
  days: FigureEvidence
  /** Fields that a new record cannot be without and that have neither a column nor one value for all. */
  missing: readonly SheetField[]
  /** What is wrong with the whole rather than with a row. */
  problems: readonly string[]
}
