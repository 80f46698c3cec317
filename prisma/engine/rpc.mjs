import { createInterface } from 'node:readline'
import { openEngine, panicMessage } from './wasm.mjs'

/**
 * @typedef {{ id: number, method?: string, params?: unknown }} Request
 * @typedef {Record<string, ((params: unknown) => Promise<unknown>) | undefined>} Methods
 */

/** The code that the native engine gives to every error that is told by its data. */
const ERROR_WITH_DATA = 4466

/**
 * Serves requests from standard input, one JSON text a line and one at a time, until the input ends.
 * @param {{ url: string, datamodels: readonly string[] }} asked
 */
export async function serve(asked) {
  /** @type {Promise<Methods> | undefined} */
  let opened
  // Opened by the first request: `generate` starts an engine and asks nothing, and needs no database for that.
  const engine = () =>
    (opened ??= openEngine(asked).then((made) => /** @type {Methods} */ (/** @type {unknown} */ (made))))
  for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
    /** @type {Request} */
    const request = JSON.parse(line)
    if (request.method === undefined) continue // the answer to a `print` of ours
    send({ id: request.id, ...(await outcome(request.method, request.params, engine)) })
  }
  // The engine may hold a pool open, and says nothing when it is done with it.
  process.exit(0)
}

/**
 * @param {string} method
 * @param {unknown} params
 * @param {() => Promise<Methods>} engine
 */
async function outcome(method, params, engine) {
  try {
    return { result: (await call(method, params, engine)) ?? {} }
  } catch (fault) {
    return { error: errorOf(fault) }
  }
}

/**
 * @param {string} method
 * @param {unknown} params
 * @param {() => Promise<Methods>} engine
 */
async function call(method, params, engine) {
  const methods = await engine()
  // The one name in which the two builds differ.
  const name = method === 'getDatabaseVersion' ? 'version' : method
  const run = methods[name]
  if (run === undefined) throw new Error(`The schema engine has no method ${method}.`)
  const result = await run.call(methods, params)
  if (method !== 'diff') return result
  // The native engine prints a difference itself and answers without it; the command line counts on that.
  const { stdout, ...rest } = /** @type {{ stdout?: string | null }} */ (result)
  if (typeof stdout === 'string') send({ id: (printed += 1), method: 'print', params: { content: stdout } })
  return { ...rest, stdout: null }
}

let printed = 0

/** @param {unknown} fault what the engine threw: an Error with `code` and `meta` where Prisma has a code for it */
function errorOf(fault) {
  const { message, code, meta } = /** @type {{ message?: string, code?: unknown, meta?: unknown }} */ (fault)
  const data = {
    // Never told as a panic: the command line would then offer to send a report to its maker.
    is_panic: false,
    message: panicMessage() ?? message ?? String(fault),
    meta: meta ?? {},
    error_code: typeof code === 'string' ? code : undefined,
    backtrace: null,
  }
  return { code: ERROR_WITH_DATA, message: 'An error happened. Check the data field for details.', data }
}

/** @param {object} message */
function send(message) {
  process.stdout.write(`${JSON.stringify({ jsonrpc: '2.0', ...message })}\n`)
}
