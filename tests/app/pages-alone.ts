import { fileURLToPath } from 'node:url'
import { readAddress } from '../../lib/platform/server/address.ts'
import { serve } from '../../lib/platform/server/serve.ts'

const address = readAddress(process.env)
if (!address.ok) throw new Error(address.problem.join('\n'))
const served = await serve({
  address: address.value,
  folder: fileURLToPath(new URL('../..', import.meta.url)),
  version: '0.0.0',
  secret: 'only for pages that are alone',
  health: () => Promise.reject(new Error('there is no database')),
  isSignedIn: () => Promise.resolve(true),
})
if (!served.ok) throw new Error(served.problem)
process.stdout.write('Serving\n')
