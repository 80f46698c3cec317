import type { AddressWords } from './address.ts'
import { pageAddress, type RowsOfPage } from './table-view.ts'

/** Which rows of how many these are, and the way to the others; nothing where all are here. */
export function TablePages({
  path,
  words,
  shown: { page, pages, from, through, all },
  of,
}: {
  path: string
  words: AddressWords
  shown: Omit<RowsOfPage<unknown>, 'rows'>
  /** What the rows are, several of them: `people`. */
  of: string
}) {
  if (pages === 1) return null
  return (
    <nav className="row pages" aria-label={`Pages of ${of}`}>
      <span className="entry">
        {figure(from)} to {figure(through)} of {figure(all)}
      </span>
      {page === 1 ? null : (
        <a rel="prev" href={pageAddress(path, words, page - 1)}>
          Those before
        </a>
      )}
      {page === pages ? null : (
        <a rel="next" href={pageAddress(path, words, page + 1)}>
          Those after
        </a>
      )}
    </nav>
  )
}

function figure(count: number): string {
  return count.toLocaleString('en-US')
}
