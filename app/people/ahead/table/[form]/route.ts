import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { AHEAD_SORTS, lapsesAhead } from '../../../../../lib/usecases/people/lapses-ahead.ts'
import { refusedFile } from '../../../../_door/file-answer.ts'
import { tableFile, wordsOfAddress } from '../../../../_door/table-file.ts'
import { caller } from '../../../../_door/visitor.ts'
import { readTableView } from '../../../../_parts/table-view.ts'
import { aheadText } from '../../ahead-text.ts'
import { askedOf } from '../../asked-ahead.ts'

/** What lapses, as the address filters and orders it, with the rows of all pages. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ form: string }> },
): Promise<Response> {
  const words = wordsOfAddress(request)
  const view = readTableView(words, AHEAD_SORTS, { sort: 'last' })
  const input = { ...askedOf(words), ...view, whole: true }
  const outcome = await callQuery(runtime(), lapsesAhead, { input }, await caller())
  if (outcome.kind !== 'done') return refusedFile(outcome)
  return tableFile((await params).form, { name: 'lapses-ahead', rows: aheadText(outcome.value) })
}
