import { callQuery } from '../../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../../lib/usecases/door/runtime.ts'
import { recordsAsSheet } from '../../../../../../lib/usecases/sheets/records-as-sheet.ts'
import { refusedFile } from '../../../../../_door/file-answer.ts'
import { tableFile } from '../../../../../_door/table-file.ts'
import { caller } from '../../../../../_door/visitor.ts'

/** The records of a kind as a sheet that can be changed and brought in again. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ kind: string; form: string }> },
): Promise<Response> {
  const { kind, form } = await params
  const outcome = await callQuery(runtime(), recordsAsSheet, { input: { kind } }, await caller())
  if (outcome.kind !== 'done') return refusedFile(outcome)
  return tableFile(form, { name: `${kind}-to-change`, rows: outcome.value.rows })
}
