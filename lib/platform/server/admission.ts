import type { IncomingMessage } from 'node:http'
import { isKnownHost, type ServerAddress } from './address.ts'
import { comesFromHere } from './same-origin.ts'

/** A request that is turned away before any page sees it. */
export type TurnedAway = { status: 400 | 403 | 405 | 411 | 413 | 421; because: string }

/** The largest body a page takes. */
export const LARGEST_BODY = 1024 * 1024
/** The largest body of the pages that take files: a sheet of 8 MB, or a program file, with what stands beside it. */
export const LARGEST_FILE_BODY = 10 * 1024 * 1024
const TAKES_FILES = /^\/(?:sheets|program\/file)(?:\?|$)/

/** What pages, files and forms are asked with. */
export const ANSWERED_METHODS: readonly string[] = ['GET', 'HEAD', 'OPTIONS', 'POST']

/** Headers that only our own server may set: the framework trusts them. */
const OURS_ALONE = [
  'x-request-id',
  'x-nonce',
  'content-security-policy',
  'x-forwarded-host',
  'x-forwarded-proto',
]

/** Why a request goes no further, or nothing. */
export function turnAway(request: IncomingMessage, address: ServerAddress): TurnedAway | undefined {
  const { headers, method = 'GET' } = request
  if (!isKnownHost(address, headers.host)) {
    return { status: 421, because: 'This server does not answer for that address.' }
  }
  if (!ANSWERED_METHODS.includes(method)) {
    return { status: 405, because: 'Nothing here is asked for in that way.' }
  }
  if (!request.url?.startsWith('/')) return { status: 400, because: 'This is not an address of a page.' }
  const here = comesFromHere({
    method,
    host: headers.host,
    origin: headers.origin,
    fetchSite: one(headers['sec-fetch-site']),
  })
  if (!here) return { status: 403, because: 'This was sent from another site, and nothing was done.' }
  if (headers['transfer-encoding'] !== undefined) {
    return { status: 411, because: 'Say how long the body is.' }
  }
  const takesFiles = TAKES_FILES.test(request.url)
  if (Number(headers['content-length'] ?? 0) > (takesFiles ? LARGEST_FILE_BODY : LARGEST_BODY)) {
    const most = takesFiles ? 'ten megabytes' : 'one megabyte'
    return { status: 413, because: `That is more than a page takes, ${most}.` }
  }
  return undefined
}

/** Takes away what a client may not say, and names the request. */
export function prepareHeaders(request: IncomingMessage, id: string): void {
  for (const name of OURS_ALONE) Reflect.deleteProperty(request.headers, name)
  request.headers['x-request-id'] = id
}

function one(value: string | string[] | undefined): string | undefined {
  return Array.isArray(value) ? value[0] : value
}
