import type { Instrumentation } from 'next'

/** Logs an error that a page, an action or a route handler ended in, under the number that stands on the page. */
export const onRequestError: Instrumentation.onRequestError = async (
  error,
  request,
  { routePath, routeType },
) => {
  // The bundler compiles this file for a second runtime too, which we do not serve in and the log cannot run in.
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { logError } = await import('./lib/platform/log/log.ts')
  const id = request.headers['x-request-id']
  const digest = error instanceof Error && 'digest' in error ? String(error.digest) : String(id)
  logError(error, digest, { request: id, route: routePath, where: routeType })
}
