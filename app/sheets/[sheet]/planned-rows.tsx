import type { Tried } from '../../../lib/usecases/sheets/desk-of-sheets.ts'
import { ROW_STATUSES, type PlannedRow, type RowStatus } from '../../../lib/usecases/sheets/plan.ts'
import { addressWith, addressWord, type AddressWords } from '../../_parts/address.ts'
import { Table, type Column } from '../../_parts/table.tsx'
import { TablePages } from '../../_parts/table-pages.tsx'
import { readTableView, rowsOfPage } from '../../_parts/table-view.ts'
import { reasonText, STATUS_OF_ROW } from '../sheet-words.ts'

const ROWS_AT_ONCE = 50

/** The rows of a sheet with what would become of each, those of one kind alone where the address says so. */
export function PlannedRows({
  path,
  words,
  tried: { plan },
}: {
  path: string
  words: AddressWords
  tried: Tried
}) {
  const show = ROW_STATUSES.find((status) => status === addressWord(words, 'show'))
  const rows = show === undefined ? plan.rows : plan.rows.filter(({ status }) => status === show)
  const { page } = readTableView(words, ['row'], { sort: 'row' })
  const cut = rowsOfPage(rows, page, ROWS_AT_ONCE)
  return (
    <>
      <nav className="row" aria-label="Rows by what would become of them">
        <ShowLink
          path={path}
          words={words}
          show={undefined}
          count={plan.rows.length}
          isHere={show === undefined}
        />
        {ROW_STATUSES.filter((status) => plan.counts[status] > 0).map((status) => (
          <ShowLink
            key={status}
            path={path}
            words={words}
            show={status}
            count={plan.counts[status]}
            isHere={show === status}
          />
        ))}
      </nav>
      {plan.counts.cannot === 0 ? null : (
        <p>
          <a href={`${path}/cannot.csv`}>Download the rows that cannot be brought in, with why</a>
        </p>
      )}
      <Table
        caption="Rows of the sheet"
        columns={COLUMNS}
        rows={cut.rows}
        rowKey={({ number }) => String(number)}
        empty={<p>There are none of these.</p>}
      />
      <TablePages path={path} words={words} shown={cut} of="rows" />
    </>
  )
}

function ShowLink({
  path,
  words,
  show,
  count,
  isHere,
}: {
  path: string
  words: AddressWords
  show: RowStatus | undefined
  count: number
  isHere: boolean
}) {
  return (
    <a
      href={`${addressWith(path, words, { show, page: undefined, did: undefined })}#rows`}
      aria-current={isHere ? 'true' : undefined}
    >
      {show === undefined ? 'all' : STATUS_OF_ROW[show]}: {count.toLocaleString('en')}
    </a>
  )
}

const COLUMNS: readonly Column<PlannedRow>[] = [
  { key: 'row', head: 'Row', cell: ({ number }) => number },
  { key: 'title', head: 'About', cell: ({ title }) => <bdi>{title}</bdi> },
  { key: 'status', head: 'What', cell: ({ status }) => <strong>{STATUS_OF_ROW[status]}</strong> },
  { key: 'says', head: 'Before and after, or why not', cell: (row) => <RowSays row={row} /> },
]

function RowSays({ row: { cells, reasons } }: { row: PlannedRow }) {
  if (reasons.length > 0)
    return (
      <ul className="plain">
        {reasons.map((reason) => (
          <li key={reasonText(reason)}>{reasonText(reason)}</li>
        ))}
      </ul>
    )
  if (cells.length === 0) return ''
  return (
    <ul className="plain">
      {cells.map(({ key, label, before, after }) => (
        <li key={key}>
          {label}:{' '}
          {before === undefined || before === '' ? null : (
            <>
              <del>
                <bdi>{before}</bdi>
              </del>{' '}
              →{' '}
            </>
          )}
          <ins>
            <bdi>{after}</bdi>
          </ins>
        </li>
      ))}
    </ul>
  )
}
