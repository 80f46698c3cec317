import { writeCsv } from '../../../lib/wording/csv.ts'
import { exportAnswer } from '../export-answer.ts'
import { rowsOfAnswer } from '../rows-of-answer.ts'

/** The answer as a sheet: a row for each person. */
export function POST(request: Request): Promise<Response> {
  return exportAnswer(request, {
    ending: 'csv',
    type: 'text/csv; charset=utf-8',
    write: (answer) => writeCsv(rowsOfAnswer(answer)),
  })
}
