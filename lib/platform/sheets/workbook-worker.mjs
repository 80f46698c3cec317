// Runs in a thread of its own, so that a workbook that takes too long or too much can be ended. Plain JavaScript: the
// thread is started without the loader that reads TypeScript.
import { parentPort } from 'node:worker_threads'
import ExcelJS from 'exceljs'

/** How many blank rows at its end a sheet may claim to have. */
const MOST_BLANK = 100_000

parentPort?.once('message', ({ bytes, sheet, mostRows }) => {
  void answer(bytes, sheet, mostRows).then((said) => parentPort?.postMessage(said))
})

/**
 * @param {Uint8Array} bytes
 * @param {string | undefined} wanted
 * @param {number} mostRows
 */
async function answer(bytes, wanted, mostRows) {
  const workbook = new ExcelJS.Workbook()
  try {
    await workbook.xlsx.load(/** @type {ArrayBuffer} */ (/** @type {unknown} */ (bytes)))
  } catch {
    return { kind: 'not-a-workbook' }
  }
  const sheets = workbook.worksheets.map(({ name }) => name)
  const found = wanted === undefined ? workbook.worksheets[0] : workbook.getWorksheet(wanted)
  if (found === undefined)
    return wanted === undefined ? { kind: 'not-a-workbook' } : { kind: 'no-such-sheet', sheets }
  if (found.actualRowCount > mostRows + 1) return { kind: 'too-many-rows', rows: found.actualRowCount }
  if (found.rowCount > MOST_BLANK) return { kind: 'too-many-rows', rows: found.rowCount }
  /** @type {string[][]} */
  const table = []
  found.eachRow({ includeEmpty: true }, (row) => {
    /** @type {string[]} */
    const cells = []
    row.eachCell({ includeEmpty: true }, (cell) => void cells.push(textOf(cell)))
    table.push(cells)
  })
  return { kind: 'table', sheet: found.name, sheets, table }
}

/**
 * What a cell shows: a day as `YYYY-MM-DD`, a formula as its last result, a number without grouping.
 * @param {import('exceljs').Cell} cell
 */
function textOf(cell) {
  const value = cell.type === ExcelJS.ValueType.Formula ? cell.result : cell.value
  if (value === null || value === undefined) return ''
  if (value instanceof Date) return dayOf(value)
  if (typeof value === 'object') return cell.text ?? ''
  // A number with leading zeros is a number with a format of zeros.
  if (typeof value === 'number' && /^0+$/.test(cell.numFmt ?? ''))
    return String(value).padStart(cell.numFmt.length, '0')
  return String(value)
}

/** @param {Date} date midnight in UTC, as the reader makes it of the number of a day */
function dayOf(date) {
  const iso = date.toISOString()
  return iso.endsWith('T00:00:00.000Z') ? iso.slice(0, 10) : iso
}
