'use server'

import { redirect } from 'next/navigation'
import { endAccount } from '../../../../../lib/usecases/accounts/end-account.ts'
import { callCommand } from '../../../../../lib/usecases/door/call-command.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { formAfter, typedText } from '../../../../_door/form-outcome.ts'
import { caller } from '../../../../_door/visitor.ts'
import type { FormState } from '../../../../_parts/form-state.ts'
import { LABELS } from '../labels.ts'

/** Ends an account, and goes back to it. */
export async function endAction(
  account: { account: string; version: number },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const input = { ...account, because: typedText(typed, 'because').trim() }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), endAccount, call, await caller())
  if (outcome.kind !== 'done') return formAfter(before, typed, outcome, LABELS)
  redirect(`/accounts/${account.account}?did=account-ended`)
}
