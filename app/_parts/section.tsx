import type { ReactNode } from 'react'

/** A section: a hairline, its name in the margin, its entries in the field beside it. */
export function Section({
  id,
  title,
  caption,
  children,
}: {
  id: string
  title: string
  caption?: ReactNode
  children: ReactNode
}) {
  return (
    <section className="section" aria-labelledby={id}>
      <div className="head">
        <h2 id={id}>{title}</h2>
        {caption === undefined ? null : <p className="caption">{caption}</p>}
      </div>
      <div className="stack">{children}</div>
    </section>
  )
}
