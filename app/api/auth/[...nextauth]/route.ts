import NextAuth from 'next-auth'
import { isFromHere } from '../../../../lib/platform/server/same-origin.ts'
import { authOptions } from '../../../_door/auth-options.ts'

type Context = { params: Promise<{ nextauth: string[] }> }
type Handler = (request: Request, context: Context) => Promise<Response>

/** next-auth's own addresses. Route handlers have no check of where a request comes from but ours. */
async function answer(request: Request, context: Context): Promise<Response> {
  if (!isFromHere(request)) return new Response('This was sent from another site.\n', { status: 403 })
  // next-auth types its handler as anything; for a route handler it is this.
  const handler = NextAuth(authOptions()) as Handler
  return handler(request, context)
}

export { answer as GET, answer as POST }
