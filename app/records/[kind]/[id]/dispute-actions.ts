'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../../lib/usecases/door/call-command.ts'
import { runtime } from '../../../../lib/usecases/door/runtime.ts'
import { answerDispute, disputeRecord } from '../../../../lib/usecases/records/disputes.ts'
import type { RecordSection } from '../../../../lib/usecases/records/record-kinds.ts'
import { formAfter, formAgain, typedText } from '../../../_door/form-outcome.ts'
import { caller } from '../../../_door/visitor.ts'
import type { FormState } from '../../../_parts/form-state.ts'
import { NEEDED } from '../../form/typed-record.ts'
import { recordPath } from '../../section-words.ts'

type Meant = { section: RecordSection; id: string }

/** Says that something in a record of one's own is wrong, and goes back to it. */
export async function wrongAction(
  { section, id }: Meant,
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const says = typedText(typed, 'says').trim()
  if (says === '')
    return formAgain(before, typed, { problems: [{ field: 'says', message: `What is wrong: ${NEEDED}.` }] })
  const call = { input: { section, id, says }, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), disputeRecord, call, await caller())
  if (outcome.kind === 'done') redirect(`${recordPath(section, id)}?did=disputed`)
  return formAfter(before, typed, outcome, { says: 'What is wrong' })
}

/** Answers somebody who says that a record of theirs is wrong, and goes back to it. */
export async function answerAction(
  { section, id, dispute }: Meant & { dispute: string },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const says = typedText(typed, 'says').trim()
  const outcomeTyped = typedText(typed, 'outcome')
  const problems = [
    ...(outcomeTyped === '' ? [{ field: 'outcome', message: `What was done: ${NEEDED}.` }] : []),
    ...(says === '' ? [{ field: 'says', message: `Answer: ${NEEDED}.` }] : []),
  ]
  if (problems.length > 0) return formAgain(before, typed, { problems })
  const input = { id: dispute, version: Number(typedText(typed, 'version')), outcome: outcomeTyped, says }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), answerDispute, call, await caller())
  if (outcome.kind === 'done') redirect(`${recordPath(section, id)}?did=answered`)
  return formAfter(before, typed, outcome, { says: 'Answer', outcome: 'What was done' })
}
