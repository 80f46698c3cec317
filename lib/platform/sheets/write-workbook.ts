import ExcelJS from 'exceljs'

const WIDEST = 60

/**
 * Rows of texts, the first of them headings, as a workbook (XLSX) of one sheet. Every cell is text: leading zeros stay,
 * and nothing in it is a formula.
 */
export async function writeWorkbook(
  name: string,
  rows: readonly (readonly string[])[],
): Promise<Uint8Array<ArrayBuffer>> {
  const workbook = new ExcelJS.Workbook()
  const sheet = workbook.addWorksheet(name, { views: [{ state: 'frozen', ySplit: 1 }] })
  sheet.columns = (rows[0] ?? []).map((_, column) => ({
    width: Math.min(WIDEST, 2 + Math.max(...rows.map((row) => row[column]?.length ?? 0))),
    style: { numFmt: '@', alignment: { vertical: 'top', wrapText: true } },
  }))
  for (const row of rows) sheet.addRow([...row])
  sheet.getRow(1).font = { bold: true }
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}
