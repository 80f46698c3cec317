import { cookies } from 'next/headers'
import { LONGEST_SESSION, sealSession, sessionCookie } from '../../lib/platform/session/session-cookie.ts'
import { signIn } from '../../lib/usecases/accounts/sign-in.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'

/** Signs in, and gives the browser that asks the session to hold; the outcome says why where it did not. */
export async function openSessionHere(input: { name: string; password: string }) {
  const outcome = await callDeskCommand(runtime(), signIn, { input }, { kind: 'nobody' })
  if (outcome.kind !== 'done') return outcome
  const { name, options } = sessionCookie()
  const held = await cookies()
  held.set(name, await sealSession(outcome.value.token), { ...options, maxAge: LONGEST_SESSION })
  return outcome
}
