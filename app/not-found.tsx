import type { Metadata } from 'next'
import { PageHeading } from './_parts/page-heading.tsx'
import { SidePage } from './_parts/side-page.tsx'

export const metadata: Metadata = { title: 'No such page' }

/** The page for an address that leads nowhere. */
export default function NotFound() {
  return (
    <SidePage>
      <PageHeading
        title="No such page"
        lead="Nothing stands at this address, or nothing that you may see. The address may be mistyped, or the record it named was withdrawn."
      />
      <p>
        <a className="button main" href="/">
          To the first page
        </a>
      </p>
    </SidePage>
  )
}
