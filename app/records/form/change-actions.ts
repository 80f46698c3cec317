'use server'

import { notFound, redirect } from 'next/navigation'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { Outcome } from '../../../lib/usecases/door/outcome.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { BEFORE, CORRECT, ENTER, WITHDRAW } from '../../../lib/usecases/records/all-records.ts'
import type { RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import { formAfter, formAgain, typedText } from '../../_door/form-outcome.ts'
import { caller } from '../../_door/visitor.ts'
import type { FormState } from '../../_parts/form-state.ts'
import { lookAtChoices, lookAtRecord, withBeyond } from '../record-at.ts'
import { recordPath, SECTION_WORDS } from '../section-words.ts'
import { besideOf } from './beside.ts'
import { FORMS } from './forms.ts'
import { keptFields } from './shown.ts'
import { toldBefore } from './told-before.ts'
import { sentRecord, WHY, withValues } from './typed-record.ts'

/** Which record a form is about. */
export type RecordMeant = { section: RecordSection; id: string }

/** Enters a record, and goes to it. What stops work, or joins two people, is told before. */
export async function enterAction(
  { section }: { section: Exclude<RecordSection, 'people'> },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  if (!Object.hasOwn(SECTION_WORDS, section)) notFound()
  const choices = await lookAtChoices()
  if (choices.kind !== 'done') return formAfter(before, typed, choices)
  const sent = sentRecord(section, typed, choices.value)
  if (sent.problems.length > 0) return formAgain(before, typed, { problems: sent.told(sent.problems) })
  const input = { fields: sent.fields, ...sent.paper }
  const who = await caller()
  if (section === 'suspensions' || section === 'joins') {
    const told = toldBefore(
      before,
      typed,
      input,
      await callQuery(runtime(), BEFORE.entering[section], { input }, who),
    )
    if (told !== undefined) return inItsPlaces(told, sent)
  }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), ENTER[section], call, who)
  if (outcome.kind === 'done') redirect(`${recordPath(section, outcome.value.id)}?did=entered`)
  return afterwards(before, typed, outcome, sent)
}

/** Corrects a record, once it was told what that changes, and goes to it. */
export async function correctAction(
  { section, id }: RecordMeant,
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  if (!Object.hasOwn(SECTION_WORDS, section)) notFound()
  const here = recordPath(section, id)
  const looked = await lookAtRecord(section, id)
  const [latest] = looked.kind === 'done' ? looked.value.versions : []
  if (looked.kind !== 'done' || latest === undefined)
    return formAfter(before, typed, looked.kind === 'done' ? { kind: 'not-found' } : looked)
  const lookedAt = await lookAtChoices()
  if (lookedAt.kind !== 'done') return formAfter(before, typed, lookedAt)
  const choices = withBeyond(lookedAt.value, latest.fact)
  const sent = sentRecord(section, typed, choices)
  const why = typedText(typed, WHY.name).trim()
  const missing = why === '' ? [{ path: WHY.name, message: 'say what was wrong, and how you know' }] : []
  const problems = [...sent.problems, ...missing]
  if (problems.length > 0) return formAgain(before, typed, { problems: sent.told(problems) })
  const fields = { ...keptFields(FORMS[section], latest.fact), ...sent.fields }
  const input = { id, version: Number(typedText(typed, 'version')), fields, why, ...sent.paper }
  const who = await caller()
  const stale = () => {
    const version = looked.value.version
    if (version === undefined) return formAfter(before, typed, { kind: 'not-found' })
    const beside = besideOf(FORMS[section], latest.fact, sent.fields, choices)
    return withValues(formAgain(before, typed, { refusal: STALE, beside }), { version: String(version) })
  }
  if (input.version !== looked.value.version) return stale()
  const told = toldBefore(
    before,
    typed,
    input,
    await callQuery(runtime(), BEFORE.correcting[section], { input }, who),
  )
  if (told !== undefined) return inItsPlaces(told, sent)
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), CORRECT[section], call, who)
  if (outcome.kind === 'done') redirect(`${here}?did=corrected`)
  return afterwards(before, typed, outcome, sent)
}

const STALE =
  'Somebody else corrected this after you opened it. Below stands what is now on record beside what you typed; both are kept. Send it again to put what you typed in its place.'

/** Withdraws a record, once it was told what that changes, and goes back to it. */
export async function withdrawAction(
  { section, id }: RecordMeant,
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  if (!Object.hasOwn(SECTION_WORDS, section)) notFound()
  const why = typedText(typed, WHY.name).trim()
  if (why === '')
    return formAgain(before, typed, {
      problems: [{ field: WHY.name, message: 'Why: say why this should never have stood.' }],
    })
  const input = { id, version: Number(typedText(typed, 'version')), why }
  const who = await caller()
  const told = toldBefore(
    before,
    typed,
    input,
    await callQuery(runtime(), BEFORE.withdrawing[section], { input }, who),
  )
  if (told !== undefined) return told
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), WITHDRAW[section], call, who)
  if (outcome.kind === 'done') redirect(`${recordPath(section, id)}?did=withdrawn`)
  return formAfter(before, typed, outcome)
}

type Sent = ReturnType<typeof sentRecord>

/** Problems at the fields of the form, in its order; all other ends as they are. */
function afterwards(
  before: FormState,
  typed: FormData,
  outcome: Exclude<Outcome<unknown>, { kind: 'done' }>,
  sent: Sent,
): FormState {
  return outcome.kind === 'invalid'
    ? formAgain(before, typed, { problems: sent.told(outcome.fields) })
    : formAfter(before, typed, outcome)
}

function inItsPlaces(state: FormState, sent: Sent): FormState {
  if (state.problems.length === 0) return state
  return {
    ...state,
    problems: sent.told(state.problems.map(({ field, message }) => ({ path: field, message }))),
  }
}
