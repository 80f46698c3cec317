import type { ServerResponse } from 'node:http'
import { BROKEN_LEAD, BROKEN_NUMBER, BROKEN_TITLE } from '../../wording/broken.ts'
import { errorNumber } from '../../wording/error-number.ts'

/** The page of last resort, where no other page can be made: plain, without style or script. */
export function crashPage(response: ServerResponse, number: string): void {
  response.statusCode = 500
  response.setHeader('Content-Type', 'text/html; charset=utf-8')
  response.end(`<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${BROKEN_TITLE} · Kerfbook</title></head>
<body>${brokenWords(number)}</body>
</html>
`)
}

/**
 * A page that could not be made arrives empty and is drawn by its scripts alone. This gives it the same words for a
 * browser without scripts, with the styles that the scripts would have loaded.
 */
export function drawWithoutScripts(response: ServerResponse): void {
  let status = response.statusCode
  Object.defineProperty(response, 'statusCode', {
    get: () => status,
    set: (wanted: number) => {
      // The framework settles the status before it writes the first byte, and that is when the body is still ours.
      if (wanted === 500 && status !== 500) holdBody(response)
      status = wanted
    },
  })
}

function holdBody(response: ServerResponse): void {
  const end = response.end.bind(response)
  const parts: Buffer[] = []
  const keep = (part: unknown) => {
    if (typeof part === 'string') parts.push(Buffer.from(part))
    else if (part instanceof Uint8Array) parts.push(Buffer.from(part))
  }
  response.write = (part: unknown) => {
    keep(part)
    return true
  }
  response.end = (part?: unknown) => {
    keep(part)
    const isPage = String(response.getHeader('content-type')).startsWith('text/html')
    const body = Buffer.concat(parts)
    return end(isPage ? Buffer.from(withWords(body.toString('utf8'))) : body, 'utf8')
  }
}

/** The page with its words before the end of the body; a page that was drawn already stays as it is. */
function withWords(page: string): string {
  const digest = /digest\\?":\\?"([^"\\]+)/.exec(page)?.[1]
  if (digest === undefined || !page.includes('id="__next_error__"')) return page
  const styles = new Set(page.match(/\/_next\/static\/[\w./-]+\.css/g))
  const links = [...styles].map((href) => `<link rel="stylesheet" href="${href}">`)
  const words = `<noscript>${links.join('')}${brokenWords(errorNumber(digest))}</noscript>`
  return page.replace('</body>', `${words}</body>`)
}

function brokenWords(number: string): string {
  return `<main id="page" class="sheet"><header class="heading"><h1>${BROKEN_TITLE}</h1><p class="lead">${BROKEN_LEAD}</p></header>
<p>${BROKEN_NUMBER} <strong class="entry">${number}</strong></p>
<p><a href="/">To the first page</a></p></main>`
}
