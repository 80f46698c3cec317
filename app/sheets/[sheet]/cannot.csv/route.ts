import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { trySheet } from '../../../../lib/usecases/sheets/desk-of-sheets.ts'
import { writeCsv } from '../../../../lib/wording/csv.ts'
import { fileAnswer, refusedFile } from '../../../_door/file-answer.ts'
import { caller } from '../../../_door/visitor.ts'
import { reasonText } from '../../sheet-words.ts'

/** The rows that cannot be brought in as they came, with why in a column more; to be put right and brought in again. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ sheet: string }> },
): Promise<Response> {
  const { sheet } = await params
  const outcome = await callQuery(runtime(), trySheet, { input: { sheet } }, await caller())
  if (outcome.kind !== 'done') return refusedFile(outcome)
  const { kept, plan } = outcome.value
  const cannot = new Map(
    plan.rows.filter(({ status }) => status === 'cannot').map(({ number, reasons }) => [number, reasons]),
  )
  const rows = kept.sheet.rows.flatMap(({ number, cells }) => {
    const reasons = cannot.get(number)
    return reasons === undefined ? [] : [[...cells, String(number), reasons.map(reasonText).join(' ')]]
  })
  const text = writeCsv([[...kept.sheet.head, 'Row in the sheet', 'Why it cannot be'], ...rows])
  return fileAnswer(`\ufeff${text}`, 'text/csv; charset=utf-8', 'rows-that-cannot.csv')
}
