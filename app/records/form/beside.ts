import type { RecordChoices } from '../../../lib/usecases/records/record-choices.ts'
import type { RecordFact } from '../../../lib/usecases/records/record-kinds.ts'
import type { Beside } from '../../_parts/form-state.ts'
import type { FormParts } from './parts.ts'
import { shownFields } from './shown.ts'

/** The fields in which what is now on record differs from what was typed. */
export function besideOf(
  parts: FormParts,
  here: RecordFact,
  typed: Readonly<Record<string, unknown>>,
  choices: RecordChoices,
): readonly Beside[] {
  const onRecord = shownFields(parts, here, choices)
  const written = shownFields(parts, typed, choices)
  const labels = [...new Set([...onRecord, ...written].map(({ label }) => label))]
  const textOf = (fields: typeof onRecord, label: string) =>
    fields.find((field) => field.label === label)?.text ?? ''
  return labels
    .map((label) => ({ label, here: textOf(onRecord, label), typed: textOf(written, label) }))
    .filter(({ here: one, typed: other }) => one !== other)
}
