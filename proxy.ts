import { randomBytes } from 'node:crypto'
import { NextResponse, type NextRequest } from 'next/server'
import { pagePolicy } from './lib/platform/server/security-headers.ts'

/** Gives each page its policy, with a nonce of its own. Who may see the page is decided in the data layer, not here. */
export function proxy(request: NextRequest): NextResponse {
  const nonce = randomBytes(16).toString('base64')
  const policy = pagePolicy(nonce, process.env['NEXTAUTH_URL']?.startsWith('https:') ?? false)
  const headers = new Headers(request.headers)
  headers.set('x-nonce', nonce)
  // The framework reads the nonce from the policy and puts it on every script it writes.
  headers.set('content-security-policy', policy)
  const response = NextResponse.next({ request: { headers } })
  response.headers.set('content-security-policy', policy)
  return response
}

export const config = { matcher: ['/((?!_next/static|api/).*)'] }
