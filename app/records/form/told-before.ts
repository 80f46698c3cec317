import type { callQuery } from '../../../lib/usecases/door/call-query.ts'
import type { BEFORE } from '../../../lib/usecases/records/all-records.ts'
import type { RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import { formAfter, formAgain, typedText } from '../../_door/form-outcome.ts'
import type { FormState } from '../../_parts/form-state.ts'
import { toldConsequences } from './told-consequences.ts'
import { digestOf, withValues } from './typed-record.ts'

type Would = Awaited<ReturnType<typeof callQuery<never, never, BeforeValue>>>
type BeforeValue = ReturnType<(typeof BEFORE.correcting)[RecordSection]['answer']>

/**
 * The form with what it would change, where that was not told yet of the very same input; nothing where it was, and the
 * change may be made.
 */
export function toldBefore(
  before: FormState,
  typed: FormData,
  input: object,
  would: Would,
): FormState | undefined {
  const digest = digestOf(input)
  const isTold = typedText(typed, 'intent') === 'do' && typedText(typed, 'told') === digest
  if (isTold) return undefined
  if (would.kind !== 'done') return formAfter(before, typed, would)
  if (!would.value.ok)
    return would.value.outcome.kind === 'invalid'
      ? formAgain(before, typed, {
          problems: would.value.outcome.fields.map(({ path, message }) => ({ field: path, message })),
        })
      : formAfter(before, typed, would.value.outcome)
  const told = toldConsequences(would.value, would.value.names)
  return withValues(formAgain(before, typed, { told }), { told: digest })
}
