import type { FormParts } from './parts.ts'
import { FIRST_DAY, LAST_DAY, PERSON } from './people-forms.ts'
import { PLACE } from './work-forms.ts'

export const HITCH_FORM: FormParts = [
  { path: 'number', label: 'Number', hint: 'As the program numbers its hitches.', kind: 'text' },
  { path: 'name', label: 'Name', kind: 'text' },
  { ...PLACE, none: 'Choose one' },
  FIRST_DAY,
  { ...LAST_DAY, hint: 'The last day of the tour.' },
  { ...PERSON, path: 'lead', label: 'Lead of the crew', hint: 'Leave it empty until somebody is found.' },
]

export const PLACEMENT_FORM: FormParts = [
  { path: 'hitch', label: 'Hitch', kind: 'one', of: 'hitches', none: 'Choose one' },
  PERSON,
  FIRST_DAY,
  { ...LAST_DAY, hint: 'The last day in this crew.' },
]
