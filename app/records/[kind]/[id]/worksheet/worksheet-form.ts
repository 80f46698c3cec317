import type { FactorShown } from '../../../../../lib/usecases/records/worksheet-of-item.ts'
import { complexityWords } from '../../../../../lib/wording/work-words.ts'
import type { FormParts } from '../../../form/parts.ts'
import { HOW_SEEN } from '../../../form/work-forms.ts'

/** The name under which the fields of the worksheet stand. */
export const SEEN = 'seen'

/** What the worksheet asks beside its factors. */
export const RATED_PARTS: FormParts = [
  {
    path: 'rater',
    label: 'Rated by',
    hint: 'The name as on record, or the id.',
    kind: 'named',
    of: 'people',
  },
  { path: 'day', label: 'On', hint: 'The day on which it was seen.', kind: 'day' },
  HOW_SEEN,
  { path: 'reason', label: 'In words', hint: 'What the boxes do not say.', kind: 'long-text', rows: 3 },
]

/** The factors as fields, each with what may be seen. */
export function factorParts(factors: readonly FactorShown[]): FormParts {
  return factors.map(({ factor, name, required, options }) => ({
    path: factor,
    label: name,
    kind: 'one',
    of: options.map(({ option, name: says, floor }) => ({
      value: option,
      label: floor === 'least' ? says : `${says} (at least ${complexityWords[floor]})`,
    })),
    none: required ? 'Not seen' : 'Nothing of it',
  }))
}
