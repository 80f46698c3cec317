import type { ReactNode } from 'react'

/** The heading of a page, and in one line what the page is for; over it, the page that it belongs to. */
export function PageHeading({
  title,
  lead,
  within,
}: {
  title: ReactNode
  lead: ReactNode
  within?: { href: string; words: string }
}) {
  return (
    <header className="heading">
      {within === undefined ? null : (
        <p className="within">
          <a href={within.href}>{within.words}</a>
        </p>
      )}
      <h1>{title}</h1>
      <p className="lead">{lead}</p>
    </header>
  )
}
