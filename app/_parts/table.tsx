import type { ReactNode } from 'react'
import type { AddressWords } from './address.ts'
import { sortAddress, type TableView } from './table-view.ts'

/** A column: its heading, and what stands in a row under it. */
export type Column<Row> = {
  key: string
  head: string
  cell: (row: Row) => ReactNode
  /** Whether the table can be ordered by it. */
  sorts?: true
  /** The heading says nothing that the cell does not say itself: where rows are folded it is left out. */
  speaksForItself?: true
}

/** How a table stands in the address, so that its headings can lead to the same table in another order. */
export type TableAddress = { path: string; words: AddressWords; view: TableView }

/**
 * A table: the first column heads its rows; headings are plain links that order it by the address, with scripts or
 * without. On a narrow screen each row folds to an entry, and the links stand above in one line. It shows the rows as
 * they come: who asks for them has put them in order.
 */
export function Table<Row>({
  caption,
  columns,
  rows,
  rowKey,
  address,
  empty,
  isEven = false,
}: {
  caption: ReactNode
  columns: readonly Column<Row>[]
  rows: readonly Row[]
  rowKey: (row: Row) => string
  address?: TableAddress
  /** What stands where there are no rows: why, and what to do first. */
  empty?: ReactNode
  /** Columns of one width, for tables that stand under each other and are compared. */
  isEven?: boolean
}) {
  if (rows.length === 0 && empty !== undefined) return <div className="stack">{empty}</div>
  return (
    // A folded row is no row to a browser any more unless the roles are written out.
    <table className={isEven ? 'table folds even' : 'table folds'} role="table">
      <caption>{caption}</caption>
      <thead role="rowgroup">
        <tr role="row">
          {columns.map((column) => (
            <Heading key={column.key} column={column} address={address} />
          ))}
        </tr>
      </thead>
      <tbody role="rowgroup">
        {rows.map((row) => (
          <tr key={rowKey(row)} role="row">
            {columns.map((column, at) =>
              at === 0 ? (
                <th key={column.key} scope="row" role="rowheader">
                  {column.cell(row)}
                </th>
              ) : (
                <td
                  key={column.key}
                  role="cell"
                  {...(column.speaksForItself ? {} : { 'data-head': column.head })}
                >
                  {column.cell(row)}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function Heading<Row>({
  column: { key, head, sorts },
  address,
}: {
  column: Column<Row>
  address: TableAddress | undefined
}) {
  if (sorts !== true || address === undefined) {
    return (
      <th scope="col" role="columnheader">
        {head}
      </th>
    )
  }
  const { path, words, view } = address
  const standing = view.sort === key ? (view.descending ? 'descending' : 'ascending') : 'none'
  return (
    <th scope="col" role="columnheader" aria-sort={standing} className="sorts">
      <a href={sortAddress(path, words, view, key)}>
        {head}
        <Arrow standing={standing} />
      </a>
    </th>
  )
}

/** Which way a column is ordered; a heading that could be has the room for it. */
function Arrow({ standing }: { standing: 'ascending' | 'descending' | 'none' }) {
  return (
    <svg className="arrow" viewBox="0 0 10 10" width="10" height="10" aria-hidden="true">
      {standing === 'none' ? null : (
        <path d={standing === 'ascending' ? 'M1 8h8L5 2z' : 'M1 2h8L5 8z'} fill="currentColor" />
      )}
    </svg>
  )
}
