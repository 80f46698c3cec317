import { callQuery } from '../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { readJournal } from '../../../../lib/usecases/journal/read-journal.ts'
import { momentText } from '../../../../lib/wording/days.ts'
import { plainAnswer, refusedFile } from '../../../_door/file-answer.ts'
import { tableFile, wordsOfAddress } from '../../../_door/table-file.ts'
import { caller } from '../../../_door/visitor.ts'

/** The entries of the journal through the number in the address, all of them, the newest first. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ form: string }> },
): Promise<Response> {
  const { through } = wordsOfAddress(request)
  if (through !== undefined && !/^[0-9]{1,10}$/.test(through))
    return plainAnswer('The number of an entry is a whole number from 1.', 400)
  const input = { whole: true, ...(through === undefined ? {} : { through: Number(through) }) }
  const outcome = await callQuery(runtime(), readJournal, { input }, await caller())
  if (outcome.kind !== 'done') return refusedFile(outcome)
  const rows = outcome.value.entries.map(({ n, by, sentence, at, statedAt }) => [
    String(n),
    by,
    sentence,
    momentText(statedAt ?? at),
    momentText(at),
  ])
  return tableFile((await params).form, {
    name: 'journal',
    rows: [['Entry', 'Who', 'Did what', 'When', 'Written here'], ...rows],
  })
}
