import type { FormParts, Leaf } from '../records/form/parts.ts'
import { PERSON } from '../records/form/people-forms.ts'

/** The name under which the fields of the form stand. */
export const STOP = 'stop'

const REASONS: Leaf = {
  path: 'kind',
  label: 'Because of',
  kind: 'one',
  of: [
    { value: 'unsafe-act', label: 'An unsafe act' },
    { value: 'incident', label: 'An incident' },
    { value: 'competence', label: 'Competence' },
  ],
}

const REST: FormParts = [
  REASONS,
  { path: 'reason', label: 'Reason', hint: 'What was seen, and where.', kind: 'long-text', rows: 3 },
]

/** Standing down somebody whose page it was opened from. */
export const STAND_DOWN_ONE: FormParts = REST

/** Standing down anybody, or everybody of a unit. */
export const STAND_DOWN_ANY: FormParts = [
  {
    kind: 'one-of',
    path: 'subject',
    label: 'Whom',
    ways: [
      { value: 'person', label: 'One person', leaves: [PERSON] },
      {
        value: 'unit',
        label: 'Everybody of a unit',
        leaves: [{ path: 'unit', label: 'Unit', kind: 'one', of: 'units', none: 'Choose one' }],
      },
    ],
  },
  ...REST,
]

/** When a notice reached somebody. */
export const NOTICE_FORM: FormParts = [
  { ...PERSON, label: 'Who was told' },
  { path: 'day', label: 'On', hint: 'Leave both empty for now.', kind: 'day' },
  { path: 'time', label: 'At', hint: 'On the clocks here, for example 14:30.', kind: 'text' },
]
