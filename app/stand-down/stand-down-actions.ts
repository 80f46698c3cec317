'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'
import { BEFORE } from '../../lib/usecases/records/all-records.ts'
import { confirmStandDown, noticeReached, standDown } from '../../lib/usecases/records/stand-down.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../_door/form-outcome.ts'
import { caller } from '../_door/visitor.ts'
import type { FormState } from '../_parts/form-state.ts'
import { labelsOf } from '../records/form/labels.ts'
import { readTypedFields } from '../records/form/read-typed.ts'
import { toldBefore } from '../records/form/told-before.ts'
import { NEEDED, toldInOrder, isBlank } from '../records/form/typed-record.ts'
import { lookAtChoices, lookAtRecord } from '../records/record-at.ts'
import { recordPath } from '../records/section-words.ts'
import { lookAtWhom } from './whom.ts'
import { NOTICE_FORM, STAND_DOWN_ANY, STAND_DOWN_ONE, STOP } from './stand-down-form.ts'

const WHY = 'why'
const TOLD = 'noticed.yes'

/** Stands down somebody at once, or everybody of a unit once it was told whom that stops; and goes to the record. */
export async function standDownAction(
  person: string | undefined,
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const choices = await lookAtChoices()
  if (choices.kind !== 'done') return formAfter(before, typed, choices)
  const whom = await lookAtWhom()
  if (whom.kind !== 'done') return formAfter(before, typed, whom)
  const parts = person === undefined ? STAND_DOWN_ANY : STAND_DOWN_ONE
  const read = readTypedFields(parts, typed, STOP, { ...choices.value, ...whom.value })
  const texts = Object.fromEntries(
    [...typed].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
  )
  const told = (problems: readonly { path: string; message: string }[]) =>
    formAgain(before, typed, {
      problems: toldInOrder(
        problems.map(({ path, message }) => {
          const place = read.place(path.startsWith(STOP) ? path : `${STOP}.${path}`) || path
          return { path: place, message: isBlank(typed, place) ? NEEDED : message }
        }),
        labelsOf(parts, STOP, texts),
      ),
    })
  if (read.problems.length > 0) return told(read.problems)
  const input = {
    ...(person === undefined ? {} : { subject: { kind: 'person', person } }),
    ...read.fields,
    told: typed.get(TOLD) !== null,
  }
  const who = await caller()
  if (texts[`${STOP}.subject.kind`] === 'unit') {
    const wait = toldBefore(
      before,
      typed,
      input,
      await callQuery(runtime(), BEFORE.standingDown, { input }, who),
    )
    if (wait !== undefined)
      return wait.problems.length === 0
        ? wait
        : told(wait.problems.map(({ field, message }) => ({ path: field, message })))
  }
  const outcome = await callCommand(
    runtime(),
    standDown,
    { input, command: typedText(typed, 'command') },
    who,
  )
  if (outcome.kind === 'done') {
    const { id } = outcome.value
    // A lead stands their crew down and reads none of its records.
    const mayRead = (await lookAtRecord('suspensions', id)).kind === 'done'
    redirect(mayRead ? `${recordPath('suspensions', id)}?did=stood-down` : `/stand-down?did=stood-down`)
  }
  return outcome.kind === 'invalid' ? told(outcome.fields) : formAfter(before, typed, outcome)
}

/** Records when a notice reached somebody. */
export async function noticeAction(id: string, before: FormState, typed: FormData): Promise<FormState> {
  const choices = await lookAtChoices()
  if (choices.kind !== 'done') return formAfter(before, typed, choices)
  const read = readTypedFields(NOTICE_FORM, typed, STOP, choices.value)
  const labels = labelsOf(NOTICE_FORM, STOP, {})
  const again = (problems: readonly { path: string; message: string }[]) =>
    formAgain(before, typed, {
      problems: problemsOf(
        problems.map(({ path, message }) => ({ path: path.replace(/^at\./, `${STOP}.`), message })),
        labels,
      ),
    })
  const { person, day, time } = read.fields
  const missing = [
    ...(person === undefined ? [{ path: `${STOP}.person`, message: NEEDED }] : []),
    ...(day === undefined && time !== undefined
      ? [{ path: `${STOP}.day`, message: 'say on which day' }]
      : []),
    ...(day !== undefined && time === undefined
      ? [{ path: `${STOP}.time`, message: 'say at what time' }]
      : []),
  ]
  const problems = [
    ...read.problems,
    ...missing.filter(({ path }) => !read.problems.some((one) => one.path === path)),
  ]
  if (problems.length > 0) return again(problems)
  const input = {
    id,
    version: Number(typedText(typed, 'version')),
    person,
    ...(day === undefined ? {} : { at: { day, time } }),
  }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), noticeReached, call, await caller())
  if (outcome.kind === 'done') redirect(`${recordPath('suspensions', id)}?did=noticed`)
  return outcome.kind === 'invalid' ? again(outcome.fields) : formAfter(before, typed, outcome)
}

/** Confirms a stand-down. */
export async function confirmAction(id: string, before: FormState, typed: FormData): Promise<FormState> {
  const why = typedText(typed, WHY).trim()
  if (why === '')
    return formAgain(before, typed, { problems: [{ field: WHY, message: 'Why: say what you found.' }] })
  const input = { id, version: Number(typedText(typed, 'version')), why }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), confirmStandDown, call, await caller())
  if (outcome.kind === 'done') redirect(`${recordPath('suspensions', id)}?did=confirmed`)
  return formAfter(before, typed, outcome, { why: 'Why' })
}
