'use server'

import type { FormState } from '../_parts/form-state.ts'

/** The form of this page does nothing: it stands as it stood. */
export async function stayAction(before: FormState): Promise<FormState> {
  return Promise.resolve(before)
}
