/** Requests that change nothing need no proof of where they come from. */
const SAFE_METHODS = new Set(['GET', 'HEAD', 'OPTIONS'])

/** What a request says of where it comes from. */
export type RequestOrigin = {
  method: string
  host: string | undefined
  origin: string | undefined
  /** `Sec-Fetch-Site`, which browsers set and pages cannot. */
  fetchSite: string | undefined
}

/**
 * Whether a request that may change something comes from a page of this server. A browser says so in two headers; a
 * request with neither comes from a program, which holds nobody's cookies.
 */
export function comesFromHere({ method, host, origin, fetchSite }: RequestOrigin): boolean {
  if (SAFE_METHODS.has(method)) return true
  if (fetchSite !== undefined && fetchSite !== 'same-origin' && fetchSite !== 'none') return false
  if (origin === undefined) return true
  return URL.canParse(origin) && new URL(origin).host === host
}

/** The same for a route handler, which gets headers of the web's kind. */
export function isFromHere(request: Request): boolean {
  const said = (name: string) => request.headers.get(name) ?? undefined
  return comesFromHere({
    method: request.method,
    host: said('host'),
    origin: said('origin'),
    fetchSite: said('sec-fetch-site'),
  })
}
