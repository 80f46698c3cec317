import { once } from 'node:events'
import { createServer, type AddressInfo } from 'node:net'
import { describe, expect, it } from 'vitest'
import { readAddress } from '../../../lib/platform/server/address.ts'
import { serve } from '../../../lib/platform/server/serve.ts'

/** Tries to serve where nothing can listen. */
async function whyNot(environment: Record<string, string>): Promise<string> {
  const address = readAddress(environment)
  if (!address.ok) throw new Error(address.problem.join('\n'))
  const served = await serve({
    address: address.value,
    folder: import.meta.dirname,
    version: '0.0.0',
    secret: 'a secret',
    health: () => Promise.resolve({ entry: 0, schema: '', isClockBehind: false }),
    isSignedIn: () => Promise.resolve(true),
  })
  return served.ok ? '' : served.problem
}

describe('where the server cannot listen', () => {
  it('a port that is taken is told in words, with what to do', async () => {
    const other = createServer().listen(0, '127.0.0.1')
    await once(other, 'listening')
    const { port } = other.address() as AddressInfo
    expect(await whyNot({ PORT: String(port) })).toBe(
      `Port ${port} is taken by another program, perhaps another Kerfbook. Stop that one, or set PORT to a free port.`,
    )
    other.close()
  })

  it('so is an address that this machine has not', async () => {
    expect(await whyNot({ HOST: '203.0.113.7', PORT: '34567' })).toMatch(
      /^HOST is "203\.0\.113\.7", which is no address/,
    )
  })
})
