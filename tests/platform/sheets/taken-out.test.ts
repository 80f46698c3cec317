import ExcelJS from 'exceljs'
import fc from 'fast-check'
import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { readTextTable } from '../../../lib/platform/sheets/read-text.ts'
import { writeWorkbook } from '../../../lib/platform/sheets/write-workbook.ts'
import { writeCsv } from '../../../lib/wording/csv.ts'
import { writeTabSeparated } from '../../../lib/wording/tab-separated.ts'

const ROWS = [
  ['Number', 'Name'],
  ['0042', 'Łukasz, “Ødegård”'],
  ['=1+1', 'two\nlines'],
  ['+1', '@SUM(A1)'],
]

describe('a table that is taken out', () => {
  it('as CSV has an apostrophe before what would be a formula, and reads back the same without it', () => {
    const rows = [...ROWS, ["'-1", "''=2", "O'Brien", "'tis"]]
    const text = writeCsv(rows)
    expect(Papa.parse<string[]>(text).data.slice(2, 5)).toEqual([
      ["'=1+1", 'two\nlines'],
      ["'+1", "'@SUM(A1)"],
      ["''-1", "'''=2", "O'Brien", "'tis"],
    ])
    expect(readTextTable(Buffer.from(text))).toMatchObject({ value: [...rows, ['']] })
  })

  it('as a workbook is text in every cell: zeros stay, and nothing is a formula', async () => {
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load((await writeWorkbook('people', ROWS)).buffer)
    const [sheet] = workbook.worksheets
    const read: string[][] = []
    sheet!.eachRow((row) => {
      const cells: string[] = []
      row.eachCell((cell) => {
        expect(cell.type).toBe(ExcelJS.ValueType.String)
        cells.push(cell.text)
      })
      read.push(cells)
    })
    expect(read).toEqual(ROWS)
    expect(sheet!.getCell('A2').numFmt).toBe('@')
  })

  it('as text to paste has as many tabs in each line, whatever stands in the cells', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.string(), fc.string({ unit: 'binary' }), fc.string()), { minLength: 1 }),
        (rows) => {
          const lines = writeTabSeparated(rows).split('\n').slice(0, -1)
          expect(lines.map((line) => line.split('\t').length)).toEqual(rows.map(() => 3))
        },
      ),
    )
  })

  it('as CSV is read by another reader as it was written', () => {
    const plain = fc
      .string({ unit: 'grapheme' })
      .filter((text) => !/^'*\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^'*[\t\r\n]|\r/u.test(text))
    fc.assert(
      fc.property(fc.array(fc.tuple(plain, plain), { minLength: 1 }), (rows) => {
        expect(
          Papa.parse<string[]>(writeCsv(rows), { delimiter: ',', newline: '\r\n' }).data.slice(0, -1),
        ).toEqual(rows)
      }),
    )
  })
})
