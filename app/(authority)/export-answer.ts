import { isFromHere } from '../../lib/platform/server/same-origin.ts'
import { askQuestion, type AnswerToQuestion } from '../../lib/usecases/authority/ask.ts'
import { keepAnswer } from '../../lib/usecases/authority/keep-answer.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { fileAnswer, plainAnswer, refusedFile } from '../_door/file-answer.ts'
import { typedText } from '../_door/form-outcome.ts'
import { caller } from '../_door/visitor.ts'
import { questionToKeep } from './question-to-keep.ts'

/** A file to write an answer to. */
export type ExportKind = {
  ending: string
  type: string
  write: (answer: AnswerToQuestion) => Written | Promise<Written>
}
type Written = string | Uint8Array<ArrayBuffer>

/** Answers the question of the address as a file, and keeps the answer: who takes it away relies on it. */
export async function exportAnswer(request: Request, { ending, type, write }: ExportKind): Promise<Response> {
  if (!isFromHere(request)) return plainAnswer('This was sent from another site.', 403)
  const question = questionToKeep(new URL(request.url).searchParams)
  if (question === undefined) return plainAnswer('The address holds no question that can be read.', 400)
  const typed = await request.formData().catch(() => undefined)
  if (typed === undefined) return plainAnswer('Send this from the form on the page.', 400)
  const here = await caller()
  const answered = await callQuery(runtime(), askQuestion, { input: question }, here)
  if (answered.kind !== 'done') return refusedFile(answered)
  const kept = await callCommand(
    runtime(),
    keepAnswer,
    { input: { question, because: 'exported' }, command: typedText(typed, 'id') },
    here,
  )
  if (kept.kind !== 'done') return refusedFile(kept)
  const { question: asked } = answered.value
  return fileAnswer(await write(answered.value), type, `who-may-${asked.first}-${asked.last}.${ending}`)
}
