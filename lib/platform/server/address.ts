import { refusal, success, type Result } from '../../core/kernel/result.ts'

/** Where the server listens and under which address people reach it. */
export type ServerAddress = {
  host: string
  port: number
  /** What people type, `https://saws.example.org`; cookies are marked secure where it begins with https. */
  publicUrl: URL
  /** Whether only this machine can reach it, or an address was named: then the hosts that requests may name are known. */
  knownHosts: ReadonlySet<string> | undefined
}

const DEFAULT_HOST = '127.0.0.1'
const DEFAULT_PORT = 3000
const LOOPBACK = new Set(['127.0.0.1', 'localhost', '::1', '[::1]'])

/**
 * Reads `HOST`, `PORT` and `NEXTAUTH_URL`.
 * @returns the address, or sentences for what is wrong
 */
export function readAddress(
  environment: Readonly<Record<string, string | undefined>>,
): Result<ServerAddress, string[]> {
  const problems: string[] = []
  const host = environment['HOST']?.trim() || DEFAULT_HOST
  const typedPort = environment['PORT']?.trim() || String(DEFAULT_PORT)
  const port = /^\d{1,5}$/.test(typedPort) ? Number(typedPort) : NaN
  if (!(port >= 1 && port <= 65_535)) {
    problems.push(`PORT is "${typedPort}", and a port is a whole number from 1 to 65535.`)
  }
  const named = environment['NEXTAUTH_URL']?.trim()
  if (named !== undefined && named !== '' && !isWebAddress(named)) {
    problems.push(
      `NEXTAUTH_URL is "${named}". Write the address that people type, such as https://saws.example.org.`,
    )
  }
  if (problems.length > 0) return refusal(problems)
  const publicUrl = new URL(
    named || `http://${LOOPBACK.has(host) || isEverywhere(host) ? 'localhost' : host}:${port}`,
  )
  return success({ host, port, publicUrl, knownHosts: knownHosts(host, port, named ? publicUrl : undefined) })
}

/** Whether cookies and headers are those of https. */
export function isHttps({ publicUrl }: ServerAddress): boolean {
  return publicUrl.protocol === 'https:'
}

/** Whether a request names a host that this server answers for. */
export function isKnownHost({ knownHosts }: ServerAddress, host: string | undefined): boolean {
  return knownHosts === undefined || (host !== undefined && knownHosts.has(host.toLowerCase()))
}

function isWebAddress(text: string): boolean {
  return URL.canParse(text) && ['http:', 'https:'].includes(new URL(text).protocol)
}

function isEverywhere(host: string): boolean {
  return host === '0.0.0.0' || host === '::'
}

function knownHosts(host: string, port: number, named: URL | undefined): ReadonlySet<string> | undefined {
  if (named === undefined && !LOOPBACK.has(host)) return undefined
  const here = ['127.0.0.1', 'localhost', '[::1]'].map((name) => `${name}:${port}`)
  return new Set([...here, ...(named === undefined ? [] : [named.host.toLowerCase()])])
}
