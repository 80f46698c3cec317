import type { FormParts } from './parts.ts'

/** The name under which the paper stands in a form. */
export const PAPER = 'paper'

/** The paper that something is typed from. */
export const PAPER_FORM: FormParts = [
  { path: 'day', label: 'Day on the paper', kind: 'day' },
  { path: 'received', label: 'Received on', kind: 'day' },
  { path: 'signedBy', label: 'Signed by', kind: 'text' },
  { path: 'lies', label: 'Where the paper lies', kind: 'text' },
]
