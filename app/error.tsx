'use client'

import { Broken } from './_parts/broken.tsx'
import { Frame } from './_parts/frame.tsx'

/** The page where a page could not be made. */
export default function ErrorPage({ error }: { error: unknown }) {
  return (
    <Frame>
      <Broken error={error} />
    </Frame>
  )
}
