import { cookies } from 'next/headers'
import { forbidden, redirect } from 'next/navigation'
import { cache } from 'react'
import { openSession, sessionCookie } from '../../lib/platform/session/session-cookie.ts'
import { callerOf } from '../../lib/usecases/accounts/sessions.ts'
import { whoAmI } from '../../lib/usecases/accounts/who-am-i.ts'
import type { Caller } from '../../lib/usecases/door/caller.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'

/** Who asks for this page, looked up once for each request by what their cookie holds. */
export const caller = cache(async (): Promise<Caller> => {
  const held = await cookies()
  return callerOf(runtime(), await openSession(held.get(sessionCookie().name)?.value))
})

/** The account that is signed in, or nothing. */
export const signedIn = cache(async () => {
  const here = await caller()
  if (here.kind !== 'account') return undefined
  const outcome = await callQuery(runtime(), whoAmI, { input: {} }, here)
  return outcome.kind === 'done' ? outcome.value : undefined
})

/** The account that is signed in, as pages show it, and the address at which they are. */
export type Visitor = NonNullable<Awaited<ReturnType<typeof signedIn>>> & { at: string }

/**
 * The account that is signed in; whoever is not goes to sign in first, and comes back to this page. An account without
 * a role is told so: signing in again would give it none.
 */
export async function visitorOf(path: string): Promise<Visitor> {
  const visitor = await signedIn()
  if (visitor === undefined && (await caller()).kind === 'account') forbidden()
  if (visitor === undefined) redirect(path === '/' ? '/sign-in' : `/sign-in?to=${encodeURIComponent(path)}`)
  return { ...visitor, at: path }
}
