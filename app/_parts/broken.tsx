import { BROKEN_HERE, BROKEN_LEAD, BROKEN_NUMBER, BROKEN_TITLE } from '../../lib/wording/broken.ts'
import { errorNumber } from '../../lib/wording/error-number.ts'
import { PageHeading } from './page-heading.tsx'

/** What a page says that could not be made: that nothing was half done, and the number under which the log knows it. */
export function Broken({ error }: { error: unknown }) {
  const digest = error instanceof Error && 'digest' in error ? String(error.digest) : undefined
  return (
    <>
      <PageHeading title={BROKEN_TITLE} lead={BROKEN_LEAD} />
      <div className="stack">
        {digest === undefined ? (
          <p>{BROKEN_HERE}</p>
        ) : (
          <p>
            {BROKEN_NUMBER} <strong className="entry">{errorNumber(digest)}</strong>
          </p>
        )}
        <p className="row">
          {/* The same address, asked anew. */}
          <a className="button main" href="">
            Try again
          </a>
          <a className="button" href="/">
            To the first page
          </a>
        </p>
      </div>
    </>
  )
}
