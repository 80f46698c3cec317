import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { takeOutProgram } from '../../../../../lib/usecases/program/take-out.ts'
import { fileAnswer, refusedFile } from '../../../../_door/file-answer.ts'
import { caller } from '../../../../_door/visitor.ts'

/** The whole program as a program file, for a manager who has just given the password. */
export async function GET(): Promise<Response> {
  const outcome = await callQuery(runtime(), takeOutProgram, { input: {} }, await caller())
  if (outcome.kind !== 'done') return refusedFile(outcome)
  return fileAnswer(outcome.value.text, 'application/json; charset=utf-8', 'program.json')
}
