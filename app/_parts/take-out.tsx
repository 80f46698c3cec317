import { addressWith, type AddressWords } from './address.ts'
import { CopyTable } from './copy-table.client.tsx'

/** The ways to take a table out, as it is filtered and ordered, with the rows of all its pages. */
export function TakeOut({
  path,
  words,
  of,
  lead = 'Take them all out',
}: {
  path: string
  words: AddressWords
  of: string
  /** What stands before the ways, where several tables are to choose from. */
  lead?: string
}) {
  const at = (form: string) => addressWith(`${path}/table/${form}`, words, { page: undefined })
  return (
    <nav className="row take-out" aria-label={`Take out these ${of}`}>
      <span className="entry">{lead}:</span>
      <a href={at('csv')}>CSV</a>
      <a href={at('xlsx')}>XLSX</a>
      <a href={at('text')}>text to paste</a>
      <CopyTable address={at('text')} />
    </nav>
  )
}
