'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../lib/usecases/door/call-command.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { enterPerson } from '../../../lib/usecases/records/enter-person.ts'
import { formAfter, formAgain, typedText } from '../../_door/form-outcome.ts'
import { caller } from '../../_door/visitor.ts'
import type { FormState } from '../../_parts/form-state.ts'
import { labelsOf } from '../../records/form/labels.ts'
import { MEMBERSHIP_PARTS, PERSON_FORM } from '../../records/form/people-forms.ts'
import { readTypedFields } from '../../records/form/read-typed.ts'
import {
  FIELDS,
  isBlank,
  labelsFor,
  NEEDED,
  sentPaper,
  toldInOrder,
} from '../../records/form/typed-record.ts'
import { lookAtChoices } from '../../records/record-at.ts'
import { MEMBERSHIP } from './membership.ts'

/** Enters somebody new with their first membership, and goes to their page. */
export async function enterPersonAction(before: FormState, typed: FormData): Promise<FormState> {
  const lookedAt = await lookAtChoices()
  if (lookedAt.kind !== 'done') return formAfter(before, typed, lookedAt)
  const choices = lookedAt.value
  const person = readTypedFields(PERSON_FORM, typed, FIELDS, choices)
  const member = readTypedFields(MEMBERSHIP_PARTS, typed, MEMBERSHIP, choices)
  const paper = sentPaper(typed, choices)
  const labels = {
    ...labelsOf(PERSON_FORM, FIELDS, {}),
    ...labelsOf(MEMBERSHIP_PARTS, MEMBERSHIP, {}),
    ...labelsFor([], typed),
  }
  const faulty = [...person.problems, ...member.problems, ...paper.problems]
  const input = { fields: person.fields, membership: member.fields, ...paper.given }
  const call = { input, command: typedText(typed, 'command') }
  if (faulty.length > 0) return formAgain(before, typed, { problems: toldInOrder(faulty, labels) })
  const outcome = await callCommand(runtime(), enterPerson, call, await caller())
  if (outcome.kind === 'done') redirect(`/people/${outcome.value.id}`)
  return outcome.kind === 'invalid'
    ? formAgain(before, typed, {
        problems: toldInOrder(
          outcome.fields.map(({ path, message }) => ({
            path,
            message: isBlank(typed, path) ? NEEDED : message,
          })),
          labels,
        ),
      })
    : formAfter(before, typed, outcome)
}
