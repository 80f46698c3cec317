/** What a spreadsheet would take for the start of a formula. */
const FORMULA_START = /^[=+\-@\t\r]/
const NEEDS_QUOTES = /[",\r\n]/

/**
 * Rows as CSV by RFC 4180: CRLF after every row, quotes where a comma, a quote or a line break stands. A cell that a
 * spreadsheet would read as a formula gets an apostrophe before it.
 */
export function writeCsv(rows: readonly (readonly string[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('')
}

function cellText(cell: string): string {
  const harmless = FORMULA_START.test(cell) ? `'${cell}` : cell
  return NEEDS_QUOTES.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless
}
