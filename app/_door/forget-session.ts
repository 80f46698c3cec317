import { cookies } from 'next/headers'
import { sessionCookie } from '../../lib/platform/session/session-cookie.ts'

/** Takes the session out of the browser that asks. That it has ended is the data layer's to say, before this. */
export async function forgetSession(): Promise<void> {
  const { name, options } = sessionCookie()
  const held = await cookies()
  held.set(name, '', { ...options, maxAge: 0 })
}
