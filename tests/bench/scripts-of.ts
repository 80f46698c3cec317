import { gzipSync } from 'node:zlib'
import type { BrowserContext } from 'playwright-core'

/** What a page has of scripts, in bytes as they come over the wire. */
export type Scripts = {
  /** Files that the browser asked for. */
  files: number
  fetched: number
  /** What stands in the page itself, packed by itself: the page's own content again, for React to take over. */
  inline: number
}

/** What is smaller goes as it is: packing it would make it larger. */
const SMALLEST_PACKED = 1024

/** Opens a page with an empty cache and weighs every script file that the browser fetches for it. */
export async function scriptsOf(context: BrowserContext, path: string): Promise<Scripts> {
  const page = await context.newPage()
  try {
    const wire = await context.newCDPSession(page)
    await wire.send('Network.enable')
    await wire.send('Network.setCacheDisabled', { cacheDisabled: true })
    const scripts = new Map<string, { url: string; packed: boolean; bytes: number }>()
    wire.on('Network.responseReceived', ({ requestId, type, response: { url, headers } }) => {
      if (type !== 'Script') return
      scripts.set(requestId, { url, packed: headers['Content-Encoding'] === 'gzip', bytes: 0 })
    })
    // Bytes of the body as they arrive, still packed.
    wire.on('Network.dataReceived', ({ requestId, encodedDataLength }) => {
      const script = scripts.get(requestId)
      if (script !== undefined) script.bytes += encodedDataLength
    })
    const answer = await page.goto(path, { waitUntil: 'networkidle' })
    if (answer?.status() !== 200) throw new Error(`${path} answered ${answer?.status() ?? 'nothing'}`)
    const plain = [...scripts.values()].find(({ packed, bytes }) => !packed && bytes > SMALLEST_PACKED)
    if (plain !== undefined) throw new Error(`${plain.url} came without being packed`)
    const inline = await page.evaluate(() =>
      [...document.querySelectorAll('script:not([src])')].map(({ textContent }) => textContent).join('\n'),
    )
    const fetched = [...scripts.values()].reduce((sum, { bytes }) => sum + bytes, 0)
    return { files: scripts.size, fetched, inline: gzipSync(inline).length }
  } finally {
    await page.close()
  }
}
