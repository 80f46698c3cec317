import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { XLSX } from '../../_door/table-file.ts'
import { exportAnswer } from '../export-answer.ts'
import { rowsOfAnswer } from '../rows-of-answer.ts'

/** The answer as a sheet of a workbook: a row for each person. */
export function POST(request: Request): Promise<Response> {
  return exportAnswer(request, {
    ending: 'xlsx',
    type: XLSX,
    write: (answer) => runtime().writeWorkbook('who may', rowsOfAnswer(answer)),
  })
}
