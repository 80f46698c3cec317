import type { ReactNode } from 'react'

/** The heading of a page, and in one line what the page is for. */
export function PageHeading({ title, lead }: { title: ReactNode; lead: ReactNode }) {
  return (
    <header className="heading">
      <h1>{title}</h1>
      <p className="lead">{lead}</p>
    </header>
  )
}
