import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { LIST_RECORDS, type RecordRow } from '../../../../../lib/usecases/records/list-records.ts'
import { readGroupOf } from '../../../../../lib/usecases/records/readable.ts'
import { dayText, momentText } from '../../../../../lib/wording/days.ts'
import { plainAnswer, refusedFile } from '../../../../_door/file-answer.ts'
import { tableFile, wordsOfAddress } from '../../../../_door/table-file.ts'
import { caller } from '../../../../_door/visitor.ts'
import { sectionOf } from '../../../section-words.ts'
import { listInput } from '../../list-input.ts'

/** The records of a section, as the address filters and orders them, all pages of them. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ kind: string; form: string }> },
): Promise<Response> {
  const { kind, form } = await params
  const section = sectionOf(kind)
  if (section === undefined) return plainAnswer('There are no records of this kind.', 404)
  const group = readGroupOf(section)
  const { input } = listInput(section, wordsOfAddress(request))
  const outcome = await callQuery(
    runtime(),
    LIST_RECORDS[group],
    { input: { ...input, whole: true } },
    await caller(),
  )
  if (outcome.kind !== 'done') return refusedFile(outcome)
  return tableFile(form, { name: section, rows: [HEAD, ...outcome.value.page.rows.map(rowText)] })
}

const HEAD = [
  'Number here',
  'What it says',
  'About',
  'Their number',
  'From',
  'Through',
  'Recorded by',
  'Recorded',
]

function rowText({ id, says, person, first, last, recorded }: RecordRow): readonly string[] {
  return [
    ...[id, says, person?.name ?? '', person?.id ?? ''],
    ...[first, last].map((day) => (day === undefined ? '' : dayText(day))),
    ...[recorded?.by ?? '', recorded === undefined ? '' : momentText(recorded.at)],
  ]
}
