import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { listPeople } from '../../../../lib/usecases/people/list.ts'
import { plainAnswer, refusedFile } from '../../../_door/file-answer.ts'
import { tableFile, wordsOfAddress } from '../../../_door/table-file.ts'
import { caller } from '../../../_door/visitor.ts'
import { askedPeople, listInput } from '../../asked-people.ts'
import { peopleText } from '../../people-text.ts'

/** The table of people, as its address filters and orders it, with the rows of all pages. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ form: string }> },
): Promise<Response> {
  const { input, problems } = listInput(askedPeople(wordsOfAddress(request)))
  const [first] = problems
  if (first !== undefined) return plainAnswer(first.message, 400)
  const outcome = await callQuery(runtime(), listPeople, { input: { ...input, whole: true } }, await caller())
  if (outcome.kind !== 'done') return refusedFile(outcome)
  const list = outcome.value
  return tableFile((await params).form, { name: 'people', rows: peopleText(list.rows, list) })
}
