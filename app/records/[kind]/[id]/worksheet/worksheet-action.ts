'use server'

import { redirect } from 'next/navigation'
import { callCommand } from '../../../../../lib/usecases/door/call-command.ts'
import { callQuery } from '../../../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { ENTER } from '../../../../../lib/usecases/records/all-records.ts'
import { worksheetOfItem } from '../../../../../lib/usecases/records/worksheet-of-item.ts'
import { worksheetProblemSentence, worksheetSentences } from '../../../../../lib/wording/worksheets.ts'
import { formAfter, formAgain, problemsOf, typedText } from '../../../../_door/form-outcome.ts'
import { caller } from '../../../../_door/visitor.ts'
import type { FormState } from '../../../../_parts/form-state.ts'
import { labelsOf } from '../../../form/labels.ts'
import { readTypedFields } from '../../../form/read-typed.ts'
import { digestOf, NEEDED, withValues } from '../../../form/typed-record.ts'
import { lookAtChoices } from '../../../record-at.ts'
import { recordPath } from '../../../section-words.ts'
import { factorParts, RATED_PARTS, SEEN } from './worksheet-form.ts'

/** Reads a worksheet, says how complex it makes the work, and records the rating once that was told. */
export async function worksheetAction(item: string, before: FormState, typed: FormData): Promise<FormState> {
  const who = await caller()
  const choices = await lookAtChoices()
  if (choices.kind !== 'done') return formAfter(before, typed, choices)
  const sheet = await callQuery(runtime(), worksheetOfItem, { input: { item } }, who)
  if (sheet.kind !== 'done') return formAfter(before, typed, sheet)
  const factors = factorParts(sheet.value.factors)
  const seen = readTypedFields(factors, typed, SEEN, choices.value)
  const rest = readTypedFields(RATED_PARTS, typed, 'rated', choices.value)
  const labels = { ...labelsOf(factors, SEEN, {}), ...labelsOf(RATED_PARTS, 'rated', {}) }
  const missing = (['rater', 'day', 'how'] as const)
    .filter((name) => rest.fields[name] === undefined)
    .map((name) => ({ path: `rated.${name}`, message: NEEDED }))
    .filter(({ path }) => !rest.problems.some((one) => one.path === path))
  const problems = [...seen.problems, ...rest.problems, ...missing]
  if (problems.length > 0) return formAgain(before, typed, { problems: problemsOf(problems, labels) })
  const rated = await callQuery(
    runtime(),
    worksheetOfItem,
    { input: { item, day: rest.fields['day'], observations: seen.fields } },
    who,
  )
  if (rated.kind !== 'done') return formAfter(before, typed, rated)
  const { read, edition } = rated.value
  if (read === undefined || !read.ok)
    return formAgain(before, typed, {
      problems: (read?.problem ?? []).map((one) => ({ field: '', message: worksheetProblemSentence(one) })),
    })
  const fields = { ...rest.fields, item, complexity: read.value.complexity, observations: seen.fields }
  const digest = digestOf(fields)
  if (typedText(typed, 'intent') !== 'do' || typedText(typed, 'told') !== digest) {
    const lines = worksheetSentences(read.value)
    return withValues(formAgain(before, typed, { told: [{ title: `By ${edition.name}`, lines }] }), {
      told: digest,
    })
  }
  const call = { input: { fields }, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), ENTER.ratings, call, who)
  if (outcome.kind === 'done') redirect(`${recordPath(rated.value.section, item)}?did=rated`)
  return outcome.kind === 'invalid'
    ? formAgain(before, typed, {
        problems: problemsOf(
          outcome.fields.map(({ path, message }) => ({ path: path.replace(/^fields\./, 'rated.'), message })),
          labels,
        ),
      })
    : formAfter(before, typed, outcome)
}
