/** A sheet as it came: its headings, and each row with its number in the sheet, where the headings are row 1. */
export type Sheet = {
  readonly head: readonly string[]
  readonly rows: readonly SheetRow[]
}

/** One row: as many cells as there are headings. */
export type SheetRow = { readonly number: number; readonly cells: readonly string[] }

/** How many rows, columns and bytes of one sheet are read. */
export const MOST_ROWS = 20_000
export const MOST_COLUMNS = 100
export const MOST_BYTES = 8 * 1024 * 1024
export const LONGEST_CELL = 4000

/** Why a table of texts is no sheet. Data, never sentences. */
export type SheetFault =
  | { kind: 'empty' }
  | { kind: 'too-many-rows'; rows: number; most: number }
  | { kind: 'too-many-columns'; columns: number; most: number }
  | { kind: 'heading-twice'; heading: string; columns: readonly number[] }
  | { kind: 'cells-without-heading'; row: number; columns: number }
  | { kind: 'cell-too-long'; row: number; heading: string; letters: number; most: number }
  | { kind: 'hidden-character'; row: number; heading: string; code: number }

/**
 * Makes a sheet of rows of texts, of which the first that is not blank holds the headings. Blank rows are left out and
 * keep their numbers; blank columns without a heading are left out too.
 */
export function sheetOf(table: readonly (readonly string[])[]): { sheet: Sheet } | { fault: SheetFault } {
  const at = table.findIndex((row) => !isBlank(row))
  const heads = table[at]
  if (heads === undefined) return { fault: { kind: 'empty' } }
  const width = Math.max(...lastCells(table))
  if (width > MOST_COLUMNS) return { fault: { kind: 'too-many-columns', columns: width, most: MOST_COLUMNS } }
  const columns = heads.flatMap((text, column) => (text.trim() === '' ? [] : [{ head: text.trim(), column }]))
  const twice = headingTwice(columns)
  if (twice !== undefined) return { fault: twice }
  const rows: SheetRow[] = []
  for (let index = at + 1; index < table.length; index += 1) {
    const row = table[index] ?? []
    if (isBlank(row)) continue
    const fault = rowFault(row, index + 1, columns)
    if (fault !== undefined) return { fault }
    rows.push({ number: index + 1, cells: columns.map(({ column }) => (row[column] ?? '').trim()) })
  }
  if (rows.length === 0) return { fault: { kind: 'empty' } }
  if (rows.length > MOST_ROWS) return { fault: { kind: 'too-many-rows', rows: rows.length, most: MOST_ROWS } }
  return { sheet: { head: columns.map(({ head }) => head), rows } }
}

type HeadedColumn = { head: string; column: number }

function isBlank(row: readonly string[]): boolean {
  return row.every((cell) => cell.trim() === '')
}

function* lastCells(table: readonly (readonly string[])[]): Generator<number> {
  yield 0
  for (const row of table) {
    let width = row.length
    while (width > 0 && (row[width - 1] ?? '').trim() === '') width -= 1
    yield width
  }
}

function headingTwice(columns: readonly HeadedColumn[]): SheetFault | undefined {
  const seen = new Map<string, number>()
  for (const { head, column } of columns) {
    const folded = foldedHeading(head)
    const before = seen.get(folded)
    if (before !== undefined)
      return { kind: 'heading-twice', heading: head, columns: [before + 1, column + 1] }
    seen.set(folded, column)
  }
  return undefined
}

/** Control characters other than those of several lines; a NUL among them. */
const CONTROL = /[^\P{Cc}\t\n\r]/u

function rowFault(
  row: readonly string[],
  number: number,
  columns: readonly HeadedColumn[],
): SheetFault | undefined {
  const headed = new Set(columns.map(({ column }) => column))
  const stray = row.findIndex((cell, column) => cell.trim() !== '' && !headed.has(column))
  if (stray !== -1) return { kind: 'cells-without-heading', row: number, columns: stray + 1 }
  for (const { head, column } of columns) {
    const cell = row[column] ?? ''
    if (cell.length > LONGEST_CELL)
      return { kind: 'cell-too-long', row: number, heading: head, letters: cell.length, most: LONGEST_CELL }
    const control = CONTROL.exec(cell)
    if (control !== null)
      return { kind: 'hidden-character', row: number, heading: head, code: control[0].codePointAt(0) ?? 0 }
  }
  return undefined
}

/** A heading as it is compared: letters and figures alone, small. */
export function foldedHeading(heading: string): string {
  return heading
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
}
