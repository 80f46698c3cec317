import type { IncomingMessage } from 'node:http'

/**
 * The form in parts that a request carries: its bytes, `broken` where it cannot be read, which the framework would take
 * for a fault of its own, or nothing where there is none. The body is read, no more than its stated length, and put
 * back for whoever reads it next.
 */
export async function formBodyOf(request: IncomingMessage): Promise<Buffer | 'broken' | undefined> {
  const type = request.headers['content-type'] ?? ''
  if (request.method !== 'POST' || !/^\s*multipart\/form-data\b/i.test(type)) return undefined
  const boundary = /;\s*boundary=(?:"([^"]{1,70})"|([^\s;"]{1,70}))/i.exec(type)
  if (boundary === null) return 'broken'
  const body = await readAndPutBack(request)
  const isRead = body !== undefined && isWhole(body.toString('latin1'), boundary[1] ?? boundary[2] ?? '')
  return isRead ? body : 'broken'
}

/** A part: the rest of the line of the boundary, lines of headers, an empty line, anything. */
const PART = /^[ \t]*\r\n(?:[!#-'*+.0-9A-Z^_`a-z|~-]+:[^\r\n]*\r\n)+\r\n/

/** Whether a body in parts is one: every part has its headers, and the last boundary says that it is the last. */
function isWhole(body: string, boundary: string): boolean {
  const [, ...pieces] = `\r\n${body}`.split(`\r\n--${boundary}`)
  const last = pieces.pop()
  return last?.startsWith('--') === true && pieces.every((piece) => PART.test(piece))
}

/** Nothing where the client went away before all of it had come. */
function readAndPutBack(request: IncomingMessage): Promise<Buffer | undefined> {
  const length = Number(request.headers['content-length'] ?? 0)
  if (length === 0) return Promise.resolve(Buffer.alloc(0))
  return new Promise((resolve) => {
    const parts: Buffer[] = []
    let read = 0
    const end = (body?: Buffer) => {
      request.off('readable', take).off('close', gone)
      resolve(body)
    }
    const gone = () => end()
    const take = () => {
      for (let part = next(request); part !== undefined; part = next(request)) {
        parts.push(part)
        read += part.length
        if (read < length) continue
        const body = Buffer.concat(parts)
        // In the same turn in which the last of it was read, or the request would count as ended.
        request.unshift(body)
        end(body)
        return
      }
    }
    request.on('readable', take).once('close', gone)
  })
}

function next(request: IncomingMessage): Buffer | undefined {
  return (request.read() as Buffer | null) ?? undefined
}
