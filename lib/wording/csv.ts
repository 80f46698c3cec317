/**
 * What a spreadsheet would take for the start of a formula, blanks before it and its wide forms included; with
 * apostrophes before it too, so that what is written with one more is read with one less.
 */
const FORMULA_START = /^'*(?:\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|[\t\r\n])/u
/** Semicolons and tabs part cells where a spreadsheet is set so, and must not be able to. */
const NEEDS_QUOTES = /[",;\t\r\n]/

/**
 * Rows as CSV by RFC 4180: CRLF after every row, quotes where a comma, a semicolon, a tab, a quote or a line break stands. A
 * cell that a spreadsheet would read as a formula gets an apostrophe before it.
 */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('')
}

/** A cell as it was before it was made harmless. */
export function withoutGuard(cell: string): string {
  return cell.startsWith("'") && FORMULA_START.test(cell) ? cell.slice(1) : cell
}

function cellText(cell: string): string {
  const harmless = FORMULA_START.test(cell) ? `'${cell}` : cell
  return NEEDS_QUOTES.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless
}
