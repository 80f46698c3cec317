import { once } from 'node:events'
import { createServer, type AddressInfo } from 'node:net'
import { buildPages } from '../../lib/cli/serve/build-pages.ts'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { asSuperuser } from '../../lib/platform/database/roles.ts'
import { testServer } from './test-database.ts'

/** Apart from the pages that are served from this folder, which a test must not rebuild under them. */
export const TEST_PAGES = '.next-tests'
/** Any number that only this file uses: one worker builds while the others wait. */
const BUILD_LOCK = 20_270_716

/** Builds the pages for tests where that has not been done, and lets every start of this process serve those. */
export async function buildTestPages(): Promise<void> {
  process.env['KERFBOOK_DIST'] = TEST_PAGES
  await asSuperuser(await testServer(), 'postgres', async (client) => {
    await client.query('SELECT pg_advisory_lock($1)', [BUILD_LOCK])
    await buildPages(REPOSITORY, () => undefined)
  })
}

/** A port that was free a moment ago. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1')
  await once(server, 'listening')
  const { port } = server.address() as AddressInfo
  server.close()
  await once(server, 'close')
  return port
}
