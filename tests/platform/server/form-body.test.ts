import { once } from 'node:events'
import { createServer, request, type IncomingMessage } from 'node:http'
import { connect, type AddressInfo } from 'node:net'
import { text } from 'node:stream/consumers'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { formBodyOf } from '../../../lib/platform/server/form-body.ts'

const TYPE = 'multipart/form-data; boundary=edge'
const part = (name: string, value: string) =>
  `--edge\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`
const WHOLE = `${part('a', 'one')}${part('b', '')}--edge--`

const seen: boolean[] = []
/** Says whether it found the form broken, and gives back the body as whoever reads next gets it. */
const server = createServer((asked, answer) => {
  void formBodyOf(asked).then(async (found) => {
    const isBroken = found === 'broken'
    seen.push(isBroken)
    answer.setHeader('broken', String(isBroken)).end(isBroken ? '' : await text(asked))
  })
})
const port = () => (server.address() as AddressInfo).port

beforeAll(async () => {
  await once(server.listen(0, '127.0.0.1'), 'listening')
})
afterAll(() => {
  server.close()
  server.closeAllConnections()
})

async function post(type: string, pieces: readonly string[], method = 'POST') {
  const length = pieces.reduce((sum, piece) => sum + Buffer.byteLength(piece), 0)
  const headers = { 'content-type': type, 'content-length': length }
  const sent = request({ port: port(), method, headers, agent: false })
  for (const piece of pieces) await new Promise((resolve) => sent.write(piece, resolve))
  sent.end()
  const [answer] = (await once(sent, 'response')) as [IncomingMessage]
  return { isBroken: answer.headers['broken'] === 'true', body: await text(answer) }
}

describe('a form in parts', () => {
  it.each([
    ['two parts', TYPE, WHOLE],
    ['no part', TYPE, '--edge--\r\n'],
    ['a quoted boundary', 'Multipart/Form-Data; charset=utf-8; boundary="edge"', WHOLE],
    ['a line of dashes in a value', TYPE, `${part('a', '--\r\n--edg')}--edge--\r\n`],
  ])('of %s is whole, and who reads next gets all of it', async (_name, type, body) => {
    expect(await post(type, [body])).toEqual({ isBroken: false, body })
  })

  it('comes in many pieces, more than a stream holds at once', async () => {
    const pieces = [
      `--edge\r\nContent-Disposition: form-data; name="a"\r\n\r\n`,
      ...Array.from({ length: 40 }, (_, index) => String(index % 10).repeat(10_000)),
      '\r\n--edge--\r\n',
    ]
    expect(await post(TYPE, pieces)).toEqual({ isBroken: false, body: pieces.join('') })
  })

  it.each([
    ['without a boundary', 'multipart/form-data', WHOLE],
    ['with an empty boundary', 'multipart/form-data; boundary=', WHOLE],
    ['with another boundary', 'multipart/form-data; boundary=edges', WHOLE],
    ['without its end', TYPE, part('a', 'one')],
    ['whose last boundary lacks its dashes', TYPE, `${part('a', 'one')}--edge`],
    ['with a part that has no headers', TYPE, '--edge\r\n\r\none\r\n--edge--'],
    ['with a header that is none', TYPE, '--edge\r\nno header\r\n\r\none\r\n--edge--'],
    ['of nothing', TYPE, ''],
  ])('%s is broken', async (_name, type, body) => {
    expect((await post(type, [body])).isBroken).toBe(true)
  })

  it('that is cut off is broken, and is not waited for', async () => {
    const before = seen.length
    const socket = connect(port(), '127.0.0.1')
    socket.write(
      `POST / HTTP/1.1\r\nHost: here\r\nContent-Type: ${TYPE}\r\nContent-Length: 500\r\n\r\n--edge`,
      () => socket.destroy(),
    )
    await expect.poll(() => seen.slice(before)).toEqual([true])
  })
})

it.each([
  ['another kind of body', 'POST', 'text/plain'],
  ['a form that is not sent', 'PUT', TYPE],
])('%s is left alone', async (_name, method, type) => {
  expect(await post(type, ['anything'], method)).toEqual({ isBroken: false, body: 'anything' })
})
