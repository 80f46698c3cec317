import { momentText } from '../../../lib/wording/days.ts'
import { instantOf } from '../../../lib/platform/clock/clock.ts'
import { linkEnds } from '../../../lib/usecases/accounts/account-link.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { typedText } from '../../_door/form-outcome.ts'
import { publicAddress } from '../../_door/public-address.ts'
import { signedIn } from '../../_door/visitor.ts'
import type { FormState } from '../../_parts/form-state.ts'
import { LINK_GOOD } from './account-words.ts'
import { MADE } from './made-names.ts'

/** A form that made a link, with the link: the one answer on which it stands. */
export async function formMade(before: FormState, typed: FormData, account: string): Promise<FormState> {
  const { clock, demo } = runtime()
  const ends = instantOf(linkEnds(clock.realNow()))
  const timeZone = demo ? undefined : (await signedIn())?.timeZone
  const until = `It works once, within ${LINK_GOOD}: until ${momentText(ends, timeZone)}`
  return {
    command: before.command,
    tries: before.tries + 1,
    problems: [],
    isDone: true,
    values: {
      [MADE.link]: publicAddress(`/set-password/${typedText(typed, 'code')}`),
      // The days of a demonstration are not those of the machine's clock.
      [MADE.says]: demo ? `${until}, by the clock of this machine.` : `${until}.`,
      [MADE.account]: account,
    },
  }
}
