'use server'

import { openAgain } from '../../../../../lib/usecases/accounts/open-again.ts'
import { callCommand } from '../../../../../lib/usecases/door/call-command.ts'
import { runtime } from '../../../../../lib/usecases/door/runtime.ts'
import { formAfter, formAgain, typedText } from '../../../../_door/form-outcome.ts'
import { steppedUpCaller } from '../../../../_door/stepped-up.ts'
import type { FormState } from '../../../../_parts/form-state.ts'
import { formMade } from '../../form-made.ts'
import { LABELS } from '../labels.ts'

/** Opens an account again, and shows the link that was made. */
export async function openAgainAction(
  account: { account: string; version: number },
  before: FormState,
  typed: FormData,
): Promise<FormState> {
  const who = await steppedUpCaller(typed)
  if (!who.ok) return formAgain(before, typed, { problems: [who.problem], wantsPassword: true })
  const input = { ...account, because: typedText(typed, 'because').trim(), code: typedText(typed, 'code') }
  const call = { input, command: typedText(typed, 'command') }
  const outcome = await callCommand(runtime(), openAgain, call, who.caller)
  return outcome.kind === 'done'
    ? formMade(before, typed, outcome.value.account)
    : formAfter(before, typed, outcome, LABELS)
}
