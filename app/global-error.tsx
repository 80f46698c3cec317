'use client'

import './_look/tokens.css'
import './_look/ground.css'
import './_look/parts.css'
import './_look/forms.css'
import './_look/tables.css'
import './_look/books.css'
import { Broken } from './_parts/broken.tsx'
import { Frame } from './_parts/frame.tsx'

/** The page where not even the root of all pages could be made. */
export default function GlobalErrorPage({ error }: { error: unknown }) {
  return (
    <html lang="en">
      <body>
        <title>Something broke · Kerfbook</title>
        <Frame>
          <Broken error={error} />
        </Frame>
      </body>
    </html>
  )
}
