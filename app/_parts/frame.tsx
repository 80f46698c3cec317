import type { ReactNode } from 'react'
import { Wordmark } from './wordmark.tsx'

/** What stands round every page: the name, the program, who is here, and at the foot what every answer says. */
export function Frame({
  program,
  who,
  rooms,
  children,
}: {
  program?: string | undefined
  who?: ReactNode
  /** The way to the other pages, for somebody who is signed in. */
  rooms?: ReactNode
  children: ReactNode
}) {
  return (
    <>
      <header className="mast">
        <div className="sheet">
          <Wordmark />
          <span className="program">
            <bdi>{program}</bdi>
          </span>
          {who === undefined ? null : <div className="who">{who}</div>}
          {rooms}
        </div>
      </header>
      <main id="page" className="sheet" tabIndex={-1}>
        {children}
      </main>
      <footer className="sheet">
        <p className="foot">Authority is not safety. This says who may, not that anything should be cut.</p>
      </footer>
    </>
  )
}
