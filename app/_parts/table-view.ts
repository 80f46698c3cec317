import { addressWith, addressWord, type AddressWords } from './address.ts'

/** How a table stands in the address: by which column, which way round, and which page of its rows. */
export type TableView<Key extends string = string> = { sort: Key; descending: boolean; page: number }

/** The names under which a table stands in the address. */
const SORT = 'sort'
const ORDER = 'order'
const PAGE = 'page'
const DOWN = 'down'

/** Farther than any table goes; a page beyond the last is answered with the last. */
const LAST_PAGE = 1_000_000

/** Reads how a table is to stand. What the address says wrongly counts as not said. */
export function readTableView<Key extends string>(
  words: AddressWords,
  keys: readonly Key[],
  usual: { sort: Key; descending?: boolean },
): TableView<Key> {
  const asked = addressWord(words, SORT)
  const sort = keys.find((key) => key === asked)
  const page = addressWord(words, PAGE) ?? '1'
  return {
    sort: sort ?? usual.sort,
    descending: sort === undefined ? (usual.descending ?? false) : addressWord(words, ORDER) === DOWN,
    page: /^[1-9][0-9]{0,6}$/.test(page) ? Math.min(Number(page), LAST_PAGE) : 1,
  }
}

/** The address of the same table by another column, from its first page on; by the same column it is turned round. */
export function sortAddress(path: string, words: AddressWords, view: TableView, key: string): string {
  const turned = view.sort === key && !view.descending
  return addressWith(path, words, { [SORT]: key, [ORDER]: turned ? DOWN : undefined, [PAGE]: undefined })
}

/** The address of another page of the same table. */
export function pageAddress(path: string, words: AddressWords, page: number): string {
  return addressWith(path, words, { [PAGE]: page === 1 ? undefined : String(page) })
}

/** The rows of one page, with where they stand among all; a page beyond the last is the last. */
export type RowsOfPage<Row> = {
  rows: readonly Row[]
  page: number
  pages: number
  /** The place of the first row of the page, counted from 1; 0 where there is none. */
  from: number
  through: number
  all: number
}

/** Cuts one page out of rows that are in order already. */
export function rowsOfPage<Row>(rows: readonly Row[], page: number, atOnce: number): RowsOfPage<Row> {
  const pages = Math.max(1, Math.ceil(rows.length / atOnce))
  const here = Math.min(page, pages)
  const cut = rows.slice((here - 1) * atOnce, here * atOnce)
  const from = cut.length === 0 ? 0 : (here - 1) * atOnce + 1
  return {
    rows: cut,
    page: here,
    pages,
    from,
    through: from + cut.length - (cut.length === 0 ? 0 : 1),
    all: rows.length,
  }
}
