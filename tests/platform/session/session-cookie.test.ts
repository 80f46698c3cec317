import { encode } from 'next-auth/jwt'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { openSession, sealSession, sessionCookie } from '../../../lib/platform/session/session-cookie.ts'

const SECRET = 'a secret that only this test knows'

beforeEach(() => {
  vi.stubEnv('NEXTAUTH_SECRET', SECRET)
  vi.stubEnv('NEXTAUTH_URL', 'http://localhost:3000')
})
afterEach(() => vi.unstubAllEnvs())

describe('the cookie of a session', () => {
  it('opens to what was sealed, and shows nothing of it', async () => {
    const sealed = await sealSession('random-text-of-a-session')
    expect(sealed).not.toContain('random-text-of-a-session')
    expect(Buffer.from(sealed.split('.').join(''), 'base64url').toString('latin1')).not.toContain(
      'random-text',
    )
    expect(await openSession(sealed)).toBe('random-text-of-a-session')
  })

  it.each([
    ['nothing', undefined],
    ['an empty text', ''],
    ['something else', 'no.seal.at.all.here'],
  ])('opens to nothing where it holds %s', async (_name, cookie) => {
    expect(await openSession(cookie)).toBeUndefined()
  })

  it('opens to nothing where it was sealed elsewhere, altered, outlived, or made for something else', async () => {
    const sealed = await sealSession('mine')
    const altered = `${sealed.slice(0, -2)}${sealed.endsWith('AA') ? 'BB' : 'AA'}`
    expect(await openSession(altered)).toBeUndefined()
    expect(
      await openSession(await encode({ token: { session: 'mine' }, secret: SECRET, maxAge: -60 })),
    ).toBeUndefined()
    expect(await openSession(await encode({ token: { other: 'mine' }, secret: SECRET }))).toBeUndefined()
    vi.stubEnv('NEXTAUTH_SECRET', 'another secret')
    expect(await openSession(sealed)).toBeUndefined()
  })

  it('is bound to this host under https, and never readable by a script', () => {
    expect(sessionCookie()).toEqual({
      name: 'kerfbook-session',
      options: { httpOnly: true, sameSite: 'lax', path: '/', secure: false },
    })
    vi.stubEnv('NEXTAUTH_URL', 'https://saws.example.org')
    expect(sessionCookie()).toEqual({
      name: '__Host-kerfbook-session',
      options: { httpOnly: true, sameSite: 'lax', path: '/', secure: true },
    })
  })

  it('is not made without a secret', async () => {
    vi.stubEnv('NEXTAUTH_SECRET', '')
    await expect(sealSession('mine')).rejects.toThrow(/NEXTAUTH_SECRET/)
  })
})
