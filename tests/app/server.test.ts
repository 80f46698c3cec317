import { once } from 'node:events'
import { request, type IncomingMessage } from 'node:http'
import { connect } from 'node:net'
import { text } from 'node:stream/consumers'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'

let kerfbook: Kerfbook
beforeAll(async () => {
  kerfbook = await startKerfbook()
}, 400_000)
afterAll(() => kerfbook.stop())

/** A request as it is, without what `fetch` adds. */
async function send(
  path: string,
  options: {
    method?: string
    headers?: Record<string, string>
    body?: string | Buffer
    chunked?: boolean
  } = {},
): Promise<{ status: number | undefined; headers: IncomingMessage['headers']; body: string }> {
  const { hostname, port } = new URL(kerfbook.address)
  const { body = '', chunked = false, method = 'GET' } = options
  const length = chunked || method === 'GET' ? {} : { 'content-length': String(Buffer.byteLength(body)) }
  const sent = request({ hostname, port, path, method, headers: { ...length, ...options.headers } })
  sent.on('error', () => undefined) // a server that turns a body away may close before it has read it
  if (chunked) sent.write(body)
  sent.end(chunked ? '' : body)
  const [answer] = (await once(sent, 'response')) as [IncomingMessage]
  return { status: answer.statusCode, headers: answer.headers, body: await text(answer) }
}

/** All that comes back over one connection until the server closes it. */
async function sendRaw(...lines: string[]): Promise<string> {
  const { hostname, port } = new URL(kerfbook.address)
  const socket = connect(Number(port), hostname)
  socket.write([...lines, '', ''].join('\r\n'))
  return text(socket)
}

const sendUpgrade = (path: string) =>
  sendRaw(
    `GET ${path} HTTP/1.1`,
    `Host: ${new URL(kerfbook.address).host}`,
    'Connection: Upgrade',
    'Upgrade: websocket',
    'Sec-WebSocket-Version: 13',
    'Sec-WebSocket-Key: dGhlIHNhbXBsZSBub25jZQ==',
  )

const UPGRADES = ['/_next/webpack-hmr', '/']

/** A form in parts, each given as its headers and its value. */
const parts = (boundary: string, ...each: [string, string][]) =>
  [
    ...each.map(([head, value]) => `--${boundary}\r\n${head}\r\n\r\n${value}\r\n`),
    `--${boundary}--\r\n`,
  ].join('')

const field = (name: string, value: string): [string, string] => [
  `Content-Disposition: form-data; name="${name}"`,
  value,
]

const PATHS = ['/', '/sign-in', '/health', '/no/such/page', '/icon.svg', '/api/auth/csrf']

describe('every answer', () => {
  it.each(PATHS)('of %s has the headers that guard it', async (path) => {
    const { headers } = await send(path)
    expect(headers).toMatchObject({
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
      'referrer-policy': 'same-origin',
      'cross-origin-opener-policy': 'same-origin',
      'cross-origin-resource-policy': 'same-origin',
      'cache-control': expect.stringContaining('no-store') as string,
      'x-request-id': expect.stringMatching(/^[0-9a-f-]{36}$/) as string,
    })
    expect(headers['content-security-policy']).toMatch(/^default-src 'none';.*frame-ancestors 'none'/)
    expect(headers['content-security-policy']).not.toMatch(/unsafe-(inline|eval)/)
    expect(headers['x-powered-by']).toBeUndefined()
  })

  it('names the request as the log does, whatever the client calls it', async () => {
    const { headers } = await send('/sign-in?to=/people', { headers: { 'x-request-id': 'mine' } })
    const id = headers['x-request-id']
    expect(id).not.toBe('mine')
    await expect.poll(() => kerfbook.logged().filter((line) => line['request'] === id)).toHaveLength(1)
    const [line] = kerfbook.logged().filter((each) => each['request'] === id)
    expect(line).toMatchObject({ method: 'GET', path: '/sign-in', status: 200 })
  })

  it('of a file that is named by its hash may be kept, and is small', async () => {
    const { body } = await send('/sign-in')
    const file = /\/_next\/static\/[\w./-]+\.css/.exec(body)?.[0] ?? ''
    const { headers } = await send(file, { headers: { 'accept-encoding': 'gzip' } })
    expect(headers['cache-control']).toBe('public, max-age=31536000, immutable')
    expect(headers['content-encoding']).toBe('gzip')
  })

  it('is not swayed by a nonce or a policy that the client sends', async () => {
    const headers = { 'x-nonce': 'mine', 'content-security-policy': "script-src 'nonce-mine'" }
    const answer = await send('/sign-in', { headers })
    expect(answer.body).not.toContain('nonce="mine"')
    expect(answer.headers['content-security-policy']).not.toContain('nonce-mine')
  })
})

describe('what the server turns away', () => {
  it.each([
    ['a body over a megabyte', { body: Buffer.alloc(1024 * 1024 + 1, 'x') }, 413],
    ['a body of no stated length', { body: 'name=x', chunked: true }, 411],
    ['another host', { headers: { host: 'rebound.example' } }, 421],
  ])('%s', async (_name, options, status) => {
    expect((await send('/sign-in', { method: 'POST', ...options })).status).toBe(status)
  })

  it('a megabyte and no more is let through to the page', async () => {
    const { status } = await send('/sign-in', { method: 'POST', body: Buffer.alloc(1024 * 1024, 'x') })
    expect(status).not.toBe(413)
  })
})

describe('another protocol', () => {
  // The framework takes upgrades over at its first page; the ones before and after it are refused alike.
  it.each(['before', 'after'])('is refused and the connection closed, %s a page was served', async (when) => {
    if (when === 'after') expect((await send('/sign-in')).status).toBe(200)
    const answers = await Promise.all(UPGRADES.map(sendUpgrade))
    for (const answer of answers) expect(answer).toMatch(/^HTTP\/1\.1 400 [^]*\r\n\r\n$/)
  })
})

describe('a request that makes no sense', () => {
  it.each(['TRACE', 'PUT', 'DELETE'])('%s is answered with what there is', async (method) => {
    const { status, headers } = await send('/sign-in', { method })
    expect([status, headers.allow]).toEqual([405, 'GET, HEAD, OPTIONS, POST'])
  })

  it.each([
    ['no boundary', 'multipart/form-data', parts('edge', field('name', 'x'))],
    ['another boundary', 'multipart/form-data; boundary=other', parts('edge', field('name', 'x'))],
    [
      'no end',
      'multipart/form-data; boundary=edge',
      '--edge\r\nContent-Disposition: form-data; name="name"\r\n\r\nx',
    ],
    ['a part without headers', 'multipart/form-data; boundary=edge', parts('edge', ['', 'x'])],
    ['nothing', 'multipart/form-data; boundary=edge', ''],
  ])('a form of %s is told so', async (_name, type, body) => {
    const answer = await send('/sign-in', { method: 'POST', headers: { 'content-type': type }, body })
    expect([answer.status, answer.body]).toEqual([400, 'This is no form that can be read.\n'])
  })

  it('a character that cannot be kept is told at its field', async () => {
    const page = (await send('/sign-in')).body
    const hidden = [...page.matchAll(/<input type="hidden"[^>]*>/g)].map(([input]) => {
      const of = (name: string) => new RegExp(` ${name}="([^"]*)"`).exec(input)?.[1] ?? ''
      return field(of('name'), of('value').replaceAll('&quot;', '"').replaceAll('&amp;', '&'))
    })
    const body = parts('edge', ...hidden, field('name', 'so\0me'), field('password', 'some-password'))
    const headers = { 'content-type': 'multipart/form-data; boundary=edge' }
    const answer = await send('/sign-in', { method: 'POST', headers, body })
    expect(answer.status).toBe(200)
    expect(answer.body).toContain('This holds a character that cannot be kept; type it again.')
  })
})

describe('/health', () => {
  it('answers a watcher that knows no name of ours', async () => {
    expect((await send('/health', { headers: { host: '10.1.2.3:9999' } })).status).toBe(200)
  })

  it('says what is up, to which entry, and nothing about anybody', async () => {
    const { status, headers, body } = await send('/health')
    expect([status, headers['content-type']]).toEqual([200, 'application/json; charset=utf-8'])
    const health = JSON.parse(body) as { journal: { entry: number }; schema: string; version: string }
    expect(Object.keys(health).sort()).toEqual(['database', 'journal', 'schema', 'status', 'version'])
    expect(health).toMatchObject({ status: 'up', database: 'up' })
    expect(health.journal.entry).toBeGreaterThan(1)
    expect(health.schema).not.toBe('')
    expect(health.version).toMatch(/^\d+\.\d+\.\d+/)
  })
})

describe('stopping', () => {
  it('is not held up by who wanted another protocol', async () => {
    const own = await startKerfbook()
    try {
      expect((await fetch(`${own.address}/sign-in`)).status).toBe(200)
      const { hostname, port } = new URL(own.address)
      const socket = connect({ port: Number(port), host: hostname, allowHalfOpen: true })
      socket.write(
        `GET ${UPGRADES[0]} HTTP/1.1\r\nHost: ${hostname}:${port}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n`,
      )
      socket.resume()
      // This side never closes: the server has to let go by itself.
      await once(socket, 'end')
      const exited = once(own.process, 'exit')
      own.process.kill('SIGTERM')
      expect(await exited).toEqual([0, null])
      socket.destroy()
    } finally {
      await own.stop()
    }
  }, 120_000)

  it('what was begun is answered before the server stops', async () => {
    const trying = Array.from({ length: 6 }, () =>
      send('/api/auth/callback/credentials', {
        method: 'POST',
        body: 'name=nobody-here&password=wrong-all-the-same&csrfToken=x',
        headers: { 'content-type': 'application/x-www-form-urlencoded' },
      }),
    )
    await expect.poll(async () => (await send('/health')).status).toBe(200)
    const exited = once(kerfbook.process, 'exit')
    kerfbook.process.kill('SIGTERM')
    const answers = await Promise.all(trying)
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 302))
    expect(await exited).toEqual([0, null])
    expect(kerfbook.printed()).toContain('Stopped. Everything is kept.')
  })
})
