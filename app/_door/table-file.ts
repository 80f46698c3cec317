import { runtime } from '../../lib/usecases/door/runtime.ts'
import { writeCsv } from '../../lib/wording/csv.ts'
import { writeTabSeparated } from '../../lib/wording/tab-separated.ts'
import { fileAnswer, plainAnswer } from './file-answer.ts'

/** A table as rows of texts, the first of them its headings. */
export type TextTable = { name: string; rows: readonly (readonly string[])[] }

/** A table as a file of the form that an address names: `csv`, `xlsx`, or `text` to be pasted. */
export async function tableFile(form: string, table: TextTable): Promise<Response> {
  const { name, rows } = table
  switch (form) {
    case 'csv':
      // The mark tells a spreadsheet that it is UTF-8.
      return fileAnswer(`\ufeff${writeCsv(rows)}`, 'text/csv; charset=utf-8', `${name}.csv`)
    case 'xlsx':
      return fileAnswer(await runtime().writeWorkbook(name, rows), XLSX, `${name}.xlsx`)
    case 'text':
      return new Response(writeTabSeparated(rows), {
        headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
      })
    default:
      return plainAnswer('A table is taken out as csv, xlsx or text.', 404)
  }
}

/** The type of a workbook. */
export const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

/** The words of an address as a page is handed them. */
export function wordsOfAddress(request: Request): Record<string, string> {
  return Object.fromEntries(new URL(request.url).searchParams)
}
