import { isFromHere } from '../../lib/platform/server/same-origin.ts'
import { askQuestion, type AnswerToQuestion } from '../../lib/usecases/authority/ask.ts'
import { keepAnswer } from '../../lib/usecases/authority/keep-answer.ts'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import type { Outcome } from '../../lib/usecases/door/outcome.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { formAfter, freshForm, typedText } from '../_door/form-outcome.ts'
import { caller } from '../_door/visitor.ts'
import { questionToKeep } from './question-to-keep.ts'

/** A file to write an answer to. */
export type ExportKind = { ending: string; type: string; write: (answer: AnswerToQuestion) => string }

/** The status of a refusal to a program that reads it. */
const STATUS = {
  invalid: 400,
  refused: 409,
  stale: 409,
  'not-found': 404,
  'sign-in-wanted': 401,
  'password-wanted': 401,
  forbidden: 403,
} as const satisfies Record<Exclude<Outcome<unknown>['kind'], 'done'>, number>

/** Answers the question of the address as a file, and keeps the answer: who takes it away relies on it. */
export async function exportAnswer(request: Request, { ending, type, write }: ExportKind): Promise<Response> {
  if (!isFromHere(request)) return said('This was sent from another site.', 403)
  const question = questionToKeep(new URL(request.url).searchParams)
  if (question === undefined) return said('The address holds no question that can be read.', 400)
  const typed = await request.formData().catch(() => undefined)
  if (typed === undefined) return said('Send this from the form on the page.', 400)
  const here = await caller()
  const answered = await callQuery(runtime(), askQuestion, { input: question }, here)
  if (answered.kind !== 'done') return refused(answered)
  const kept = await callCommand(
    runtime(),
    keepAnswer,
    { input: { question, because: 'exported' }, command: typedText(typed, 'id') },
    here,
  )
  if (kept.kind !== 'done') return refused(kept)
  const { question: asked } = answered.value
  return new Response(write(answered.value), {
    headers: {
      'content-type': type,
      'content-disposition': `attachment; filename="who-may-${asked.first}-${asked.last}.${ending}"`,
      'cache-control': 'no-store',
    },
  })
}

function refused(outcome: Exclude<Outcome<unknown>, { kind: 'done' }>): Response {
  const { refusal, problems } = formAfter(freshForm(), new FormData(), outcome)
  return said(refusal ?? problems.map(({ message }) => message).join(' '), STATUS[outcome.kind])
}

function said(text: string, status: number): Response {
  return new Response(`${text}\n`, {
    status,
    headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
  })
}
