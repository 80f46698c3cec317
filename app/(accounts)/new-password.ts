import type { FieldProblem } from '../../lib/usecases/door/outcome.ts'
import { typedText } from '../_door/form-outcome.ts'

/** What is said beside the field of a new password. */
export const NEW_PASSWORD_HINT =
  'At least 15 characters, whichever you like; a short sentence is a good one. It may be pasted.'

/** What is wrong where a new password was typed twice and not alike. */
export function typedTwice(typed: FormData): FieldProblem[] {
  return typedText(typed, 'password') === typedText(typed, 'passwordAgain')
    ? []
    : [{ path: 'passwordAgain', message: 'the two passwords differ; type the same one twice' }]
}
