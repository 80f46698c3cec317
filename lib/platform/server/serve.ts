import { randomUUID } from 'node:crypto'
import { setTimeout as wait } from 'node:timers/promises'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { Duplex } from 'node:stream'
import next from 'next'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { log, logError, takeOverConsole } from '../log/log.ts'
import { ANSWERED_METHODS, prepareHeaders, turnAway, type TurnedAway } from './admission.ts'
import { isHttps, type ServerAddress } from './address.ts'
import { crashPage, drawWithoutScripts } from './crash-page.ts'
import { formBodyOf } from './form-body.ts'
import { readHealth, sendHealth, type DatabaseHealth } from './health.ts'
import { keepTypedForm } from './kept-forms.ts'
import { securityHeaders } from './security-headers.ts'

/** What the server is started with. */
export type ServerSettings = {
  address: ServerAddress
  /** The folder of the project; the pages were built there. */
  folder: string
  version: string
  /** Seals the cookies of sessions; kept in the database. */
  secret: string
  /** Asks the database for its health; throws where it does not answer. */
  health: () => Promise<DatabaseHealth>
  /** Whether the cookies of a request hold a session that is open. */
  isSignedIn: (cookies: string | undefined) => Promise<boolean>
}

/** A server that answers. */
export type RunningServer = {
  /** Takes no more connections, lets what was begun end (ten seconds at most), and stops. */
  stop: () => Promise<void>
}

const UPGRADE_REFUSED = 'HTTP/1.1 400 Bad Request\r\nConnection: close\r\nContent-Length: 0\r\n\r\n'
const LONGEST_REQUEST_MS = 30_000
const LONGEST_HEADERS_MS = 10_000
const LONGEST_DRAIN_MS = 10_000
const KEEP_ALIVE_MS = 5_000
const LARGEST_HEADERS = 16 * 1024
/** Files whose name holds their hash: they may be kept for ever, and the log can do without them. */
const HASHED_FILE = /^\/_next\/static\//

/**
 * Serves the built pages in this process.
 * @returns the running server, or a sentence for why it cannot listen
 */
export async function serve(settings: ServerSettings): Promise<Result<RunningServer, string>> {
  const { address, folder } = settings
  let isDraining = false
  const pages: { draw?: (request: IncomingMessage, response: ServerResponse) => Promise<void> } = {}
  const server = createServer({ maxHeaderSize: LARGEST_HEADERS }, (request, response) => {
    void answer(request, response)
  })
  refuseUpgrades(server)
  server.requestTimeout = LONGEST_REQUEST_MS
  server.headersTimeout = LONGEST_HEADERS_MS
  server.keepAliveTimeout = KEEP_ALIVE_MS

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const id = randomUUID()
    const begun = performance.now()
    for (const [name, value] of securityHeaders(isHttps(address))) response.setHeader(name, value)
    response.setHeader('X-Request-Id', id)
    // Whatever is not named by its hash may be about somebody; the framework keeps what is set here.
    if (!HASHED_FILE.test(pathOf(request))) response.setHeader('Cache-Control', 'no-store')
    if (isDraining) response.setHeader('Connection', 'close')
    response.once('close', () => logRequest(request, response, id, performance.now() - begun))
    // A watcher may call this machine by any name; what it learns is nobody's.
    const isHealth = request.method === 'GET' && pathOf(request) === '/health'
    const away = isHealth ? undefined : turnAway(request, address)
    if (away !== undefined) {
      sendAway(response, away)
      return
    }
    prepareHeaders(request, id)
    try {
      const form = await formBodyOf(request)
      if (form === 'broken') {
        sendAway(response, { status: 400, because: 'This is no form that can be read.' })
        return
      }
      if (isHealth) {
        sendHealth(response, await readHealth(settings.version, isDraining, settings.health))
      } else if (pages.draw === undefined) {
        response.statusCode = 503
        response.setHeader('Retry-After', '2')
        response.end('Kerfbook is starting.\n')
      } else {
        if (form !== undefined) await keepTypedForm(request, response, form, settings.isSignedIn)
        drawWithoutScripts(response)
        await pages.draw(request, response)
      }
    } catch (error) {
      const number = logError(error, id, { request: id })
      if (response.headersSent) response.destroy()
      else crashPage(response, number)
    }
  }

  const listening = await listen(server, address)
  if (!listening.ok) return listening
  takeOverConsole()
  // The pages read both from here: the bundler compiles them apart from this server.
  process.env['NEXTAUTH_SECRET'] = settings.secret
  process.env['NEXTAUTH_URL'] = address.publicUrl.origin
  process.env['NEXT_TELEMETRY_DISABLED'] = '1'
  const app = next({
    dev: false,
    dir: folder,
    hostname: address.host,
    port: address.port,
    httpServer: server,
  })
  try {
    await app.prepare()
  } catch (error) {
    server.close()
    throw error
  }
  pages.draw = app.getRequestHandler()

  return success({
    stop: async () => {
      isDraining = true
      await drain(server)
      // What the framework still waits for is not waited for without end.
      await Promise.race([app.close(), wait(LONGEST_DRAIN_MS, undefined, { ref: false })])
    },
  })
}

/**
 * Nothing here speaks another protocol than HTTP. The framework would hold such sockets open for its own tools, past
 * every limit and past the end: its listener, which it adds at the first request, is taken away again.
 */
function refuseUpgrades(server: Server): void {
  const refuse = (_request: IncomingMessage, socket: Duplex) => {
    socket.on('error', () => socket.destroy())
    socket.end(UPGRADE_REFUSED, () => socket.destroy())
  }
  server.on('upgrade', refuse)
  server.on('newListener', (name: string, listener: (...args: unknown[]) => void) => {
    if (name === 'upgrade') process.nextTick(() => server.removeListener('upgrade', listener))
  })
}

/** Why nothing can listen on an address now, as a sentence; nothing where it can. */
export async function listenTrouble(address: ServerAddress): Promise<string | undefined> {
  const server = createServer()
  const listening = await listen(server, address)
  if (!listening.ok) return listening.problem
  await new Promise((resolve) => server.close(resolve))
  return undefined
}

/** Listens before anything slow is done, so that a taken port is told at once. */
function listen(server: Server, { host, port }: ServerAddress): Promise<Result<undefined, string>> {
  return new Promise((resolve) => {
    server.once('error', (error: NodeJS.ErrnoException) => resolve(refusal(whyNot(error, host, port))))
    server.listen(port, host, () => {
      server.removeAllListeners('error')
      resolve(success(undefined))
    })
  })
}

function whyNot(error: NodeJS.ErrnoException, host: string, port: number): string {
  switch (error.code ?? '') {
    case 'EADDRINUSE':
      return `Port ${port} is taken by another program, perhaps another Kerfbook. Stop that one, or set PORT to a free port.`
    case 'EACCES':
      return `This user may not listen on port ${port}. Set PORT to a port above 1023.`
    case 'EADDRNOTAVAIL':
    case 'ENOTFOUND':
      return `HOST is "${host}", which is no address of this machine. Set HOST to one of its addresses, or leave it out.`
    default:
      return `The server cannot listen on ${host}, port ${port} (${error.code ?? error.message}).`
  }
}

function sendAway(response: ServerResponse, { status, because }: TurnedAway): void {
  response.statusCode = status
  if (status === 405) response.setHeader('Allow', ANSWERED_METHODS.join(', '))
  // What is left of a body that nobody reads must not be taken for the next request.
  response.setHeader('Connection', 'close')
  response.setHeader('Content-Type', 'text/plain; charset=utf-8')
  response.end(`${because}\n`)
}

/** Lets what was begun end; after the longest wait what is still open is cut. */
async function drain(server: Server): Promise<void> {
  const closed = new Promise<void>((resolve) => server.close(() => resolve()))
  server.closeIdleConnections()
  const cut = setTimeout(() => server.closeAllConnections(), LONGEST_DRAIN_MS)
  await closed
  clearTimeout(cut)
}

function pathOf(request: IncomingMessage): string {
  return (request.url ?? '/').replace(/\?.*$/s, '')
}

function logRequest(request: IncomingMessage, response: ServerResponse, id: string, took: number): void {
  const path = pathOf(request)
  const line = {
    request: id,
    method: request.method,
    path,
    status: response.statusCode,
    ms: Math.round(took),
    ...(response.writableFinished ? {} : { cut: true }),
  }
  log[HASHED_FILE.test(path) || path === '/health' ? 'debug' : 'info'](line, 'request')
}
