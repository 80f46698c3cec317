import { decode, encode } from 'next-auth/jwt'

/**
 * The cookie of a session. It holds a sealed token (next-auth's JWT) with nothing in it but the random text by which
 * the data layer looks the session up, on every request: who signed out is out, whatever their cookie says.
 */
export type SessionCookie = {
  name: string
  options: { httpOnly: true; sameSite: 'lax'; path: '/'; secure: boolean }
}

/** As long as the data layer lets any session last, in seconds; it ends most of them sooner. */
export const LONGEST_SESSION = 12 * 60 * 60

/** The cookie as it is called here. With https its name binds it to this host. */
export function sessionCookie(): SessionCookie {
  const secure = fromEnvironment('NEXTAUTH_URL').startsWith('https:')
  return {
    name: secure ? '__Host-kerfbook-session' : 'kerfbook-session',
    options: { httpOnly: true, sameSite: 'lax', path: '/', secure },
  }
}

/** One cookie among those of a request, as its header names them. */
export function cookieIn(cookies: string | undefined, name: string): string | undefined {
  const pairs = (cookies ?? '').split(';').map((pair) => pair.trim())
  return pairs.find((pair) => pair.startsWith(`${name}=`))?.slice(name.length + 1)
}

/** Seals the random text of a session for its cookie. */
export async function sealSession(session: string): Promise<string> {
  return await encode({ token: { session }, secret: sessionSecret(), maxAge: LONGEST_SESSION })
}

/** Opens what a cookie holds: the random text, or nothing where it was not sealed here or its time is over. */
export async function openSession(cookie: string | undefined): Promise<string | undefined> {
  if (cookie === undefined || cookie === '') return undefined
  try {
    const token = await decode({ token: cookie, secret: sessionSecret() })
    return typeof token?.['session'] === 'string' ? token['session'] : undefined
  } catch {
    // A forged, damaged or outlived seal is no session, and no event either: browsers keep old cookies.
    return undefined
  }
}

/** The secret that seals: the server read it from the database and set it before it served the first page. */
export function sessionSecret(): string {
  return fromEnvironment('NEXTAUTH_SECRET')
}

function fromEnvironment(name: 'NEXTAUTH_SECRET' | 'NEXTAUTH_URL'): string {
  const value = process.env[name]
  if (value === undefined || value === '')
    throw new Error(`${name} is set by the server before it serves pages.`)
  return value
}
