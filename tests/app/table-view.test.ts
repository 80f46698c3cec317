import { describe, expect, it } from 'vitest'
import { addressWith, addressWord } from '../../app/_parts/address.ts'
import { pageAddress, readTableView, rowsOfPage, sortAddress } from '../../app/_parts/table-view.ts'

const KEYS = ['name', 'lapse'] as const
const view = (words: Record<string, string | string[]>) => readTableView(words, KEYS, { sort: 'lapse' })

describe('how a table stands in the address', () => {
  it.each([
    [{}, { sort: 'lapse', descending: false, page: 1 }],
    [{ sort: 'name' }, { sort: 'name', descending: false, page: 1 }],
    [
      { sort: 'name', order: 'down', page: '3' },
      { sort: 'name', descending: true, page: 3 },
    ],
    [
      { sort: 'no such column', order: 'down' },
      { sort: 'lapse', descending: false, page: 1 },
    ],
    [{ page: '0' }, { sort: 'lapse', descending: false, page: 1 }],
    [{ page: '-1' }, { sort: 'lapse', descending: false, page: 1 }],
    [{ page: '9'.repeat(40) }, { sort: 'lapse', descending: false, page: 1 }],
    [{ sort: ['name', 'lapse'] }, { sort: 'name', descending: false, page: 1 }],
  ])('%j is %j', (words, wanted) => {
    expect(view(words)).toEqual(wanted)
  })

  it('a heading leads to its order, turned round where it is the order already, from the first page on', () => {
    const words = { sort: 'name', page: '4', q: 'wrz ołów&' }
    expect(sortAddress('/people', words, view(words), 'name')).toBe(
      '/people?q=wrz+o%C5%82%C3%B3w%26&sort=name&order=down',
    )
    const turned = { ...words, order: 'down' }
    expect(sortAddress('/people', turned, view(turned), 'name')).toBe(
      '/people?q=wrz+o%C5%82%C3%B3w%26&sort=name',
    )
    expect(sortAddress('/people', turned, view(turned), 'lapse')).toBe(
      '/people?q=wrz+o%C5%82%C3%B3w%26&sort=lapse',
    )
  })

  it('another page keeps everything else, and the first has no number', () => {
    expect(pageAddress('/people', { sort: 'name', page: '2' }, 3)).toBe('/people?sort=name&page=3')
    expect(pageAddress('/people', { page: '2' }, 1)).toBe('/people')
  })

  it('a word that is empty is none, and of several the first counts', () => {
    expect(addressWord({ q: '  ' }, 'q')).toBeUndefined()
    expect(addressWord({ q: ['a', 'b'] }, 'q')).toBe('a')
    expect(addressWord({}, 'toString')).toBeUndefined()
    expect(addressWith('/', { who: ['a', 'b'] }, {})).toBe('/?who=a&who=b')
  })
})

describe('the rows of a page', () => {
  const rows = Array.from({ length: 120 }, (_, at) => at + 1)
  it.each([
    [1, { page: 1, pages: 3, from: 1, through: 50 }],
    [3, { page: 3, pages: 3, from: 101, through: 120 }],
    [99, { page: 3, pages: 3, from: 101, through: 120 }],
  ])('page %d is %j', (page, wanted) => {
    const cut = rowsOfPage(rows, page, 50)
    expect(cut).toMatchObject({ ...wanted, all: 120 })
    expect([cut.rows[0], cut.rows.at(-1)]).toEqual([wanted.from, wanted.through])
  })

  it('of no rows there is one page, which is empty', () => {
    expect(rowsOfPage([], 2, 50)).toEqual({ rows: [], page: 1, pages: 1, from: 0, through: 0, all: 0 })
  })
})
