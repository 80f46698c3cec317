/** The name, cut by the line in time. */
export function Wordmark() {
  return (
    // A plain link: a fresh page, also where scripts do not run.
    <a className="wordmark" href="/" aria-label="Kerfbook, the first page">
      Kerf
      <span className="kerf" />
      book
    </a>
  )
}
