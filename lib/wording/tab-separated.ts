/** Rows as text to paste into a spreadsheet: tabs between cells, which themselves have neither tabs nor line ends. */
export function writeTabSeparated(rows: readonly (readonly string[])[]): string {
  return rows
    .map((row) => `${row.map((cell) => harmless(cell.replace(/\s+/g, ' ').trim())).join('\t')}\n`)
    .join('')
}

/** What is pasted is read as if it were typed: a cell that begins like a formula would become one. */
function harmless(cell: string): string {
  return /^[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/u.test(cell) ? `'${cell}` : cell
}
