import type { NextAuthOptions } from 'next-auth'
import Credentials from 'next-auth/providers/credentials'
import { log } from '../../lib/platform/log/log.ts'
import { LONGEST_SESSION, sessionCookie, sessionSecret } from '../../lib/platform/session/session-cookie.ts'
import { callerOf } from '../../lib/usecases/accounts/sessions.ts'
import { signIn } from '../../lib/usecases/accounts/sign-in.ts'
import { signOut } from '../../lib/usecases/accounts/sign-out.ts'
import { whoAmI } from '../../lib/usecases/accounts/who-am-i.ts'
import { callDeskCommand } from '../../lib/usecases/door/call-desk.ts'
import { callQuery } from '../../lib/usecases/door/call-query.ts'
import { runtime } from '../../lib/usecases/door/runtime.ts'

/**
 * How next-auth signs in and out: by the same use cases as our own page. Its token holds the random text of the
 * session and nothing else, and whose session that is the data layer says at each request.
 */
export function authOptions(): NextAuthOptions {
  return {
    secret: sessionSecret(),
    session: { strategy: 'jwt', maxAge: LONGEST_SESSION },
    cookies: { sessionToken: sessionCookie() },
    pages: { signIn: '/sign-in', signOut: '/sign-in', error: '/sign-in' },
    providers: [
      Credentials({
        credentials: { name: { label: 'Sign-in name' }, password: { label: 'Password', type: 'password' } },
        authorize: async (typed) => {
          const input = { name: typed?.name ?? '', password: typed?.password ?? '' }
          const outcome = await callDeskCommand(runtime(), signIn, { input }, { kind: 'nobody' })
          return outcome.kind === 'done' ? { id: outcome.value.token } : null
        },
      }),
    ],
    callbacks: {
      // The user is there at sign-in alone; later the token comes back as it was made.
      jwt: ({ token, user }) => ({ session: (user as { id: string } | undefined)?.id ?? token['session'] }),
      session: async ({ session, token }) => {
        const here = await callerOf(runtime(), textOf(token['session']))
        const outcome = await callQuery(runtime(), whoAmI, { input: {} }, here)
        if (outcome.kind !== 'done') return { expires: new Date(0).toISOString() }
        return { expires: session.expires, user: { name: outcome.value.signInName } }
      },
    },
    events: {
      signOut: async ({ token }) => {
        await callDeskCommand(
          runtime(),
          signOut,
          { input: {} },
          await callerOf(runtime(), textOf(token['session'])),
        )
      },
    },
    logger: {
      error: (code, about) => log.error({ sign: code, about }, 'next-auth'),
      warn: (code) => log.warn({ sign: code }, 'next-auth'),
      debug: () => undefined,
    },
  }
}

function textOf(value: unknown): string | undefined {
  return typeof value === 'string' ? value : undefined
}
