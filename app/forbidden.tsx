import type { Metadata } from 'next'
import { PageHeading } from './_parts/page-heading.tsx'
import { SidePage } from './_parts/side-page.tsx'

export const metadata: Metadata = { title: 'Not for your roles' }

/** The page where none of somebody's roles opens what they asked for. */
export default function ForbiddenPage() {
  return (
    <SidePage>
      <PageHeading
        title="Not for your roles"
        lead="None of your roles opens this page. Whoever manages the program can give you one that does."
      />
      <p className="row">
        <a className="button main" href="/accounts/me">
          See what you may do here
        </a>
        <a className="button" href="/">
          To the first page
        </a>
      </p>
    </SidePage>
  )
}
