import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  figureEvidence,
  figuresOf,
  FIGURE_ORDERS,
  isoOf,
  yearFirst,
} from '../../../lib/core/sheets/figure-days.ts'
import { proposedColumns } from '../../../lib/core/sheets/match-columns.ts'
import { SHEET_FIELDS } from '../../../lib/core/sheets/sheet-fields.ts'
import { SHEET_KINDS } from '../../../lib/core/sheets/sheet-kinds.ts'
import { LONGEST_CELL, MOST_COLUMNS, MOST_ROWS, sheetOf } from '../../../lib/core/sheets/sheet.ts'

describe('rows of texts', () => {
  it('[SH1] become a sheet with the numbers that the rows have in it; blank rows and columns are left out', () => {
    expect(
      sheetOf([
        ['', '', ''],
        [' Name ', '', 'Born'],
        ['', '', ''],
        ['A', '', ' 1 '],
        ['B', ''],
      ]),
    ).toEqual({
      sheet: {
        head: ['Name', 'Born'],
        rows: [
          { number: 4, cells: ['A', '1'] },
          { number: 5, cells: ['B', ''] },
        ],
      },
    })
  })

  it.each<[string, string[][], object]>([
    ['nothing', [], { kind: 'empty' }],
    ['blank rows', [['', ' ']], { kind: 'empty' }],
    ['headings alone', [['Name']], { kind: 'empty' }],
    [
      'a column twice',
      [
        ['Name', 'Born', ' NAME '],
        ['x', 'y', 'z'],
      ],
      { kind: 'heading-twice', heading: 'NAME', columns: [1, 3] },
    ],
    [
      'a cell beside the headings',
      [['Name'], ['x', 'y']],
      { kind: 'cells-without-heading', row: 2, columns: 2 },
    ],
    ['a NUL', [['Name'], ['a\0b']], { kind: 'hidden-character', row: 2, heading: 'Name', code: 0 }],
    [
      'a cell too long',
      [['Name'], ['x'.repeat(LONGEST_CELL + 1)]],
      { kind: 'cell-too-long', row: 2, heading: 'Name', letters: LONGEST_CELL + 1, most: LONGEST_CELL },
    ],
    [
      'too many columns',
      [Array.from({ length: MOST_COLUMNS + 1 }, (_, at) => `c${at}`)],
      { kind: 'too-many-columns', columns: MOST_COLUMNS + 1, most: MOST_COLUMNS },
    ],
    [
      '100,000 rows',
      [['Name'], ...Array.from({ length: 100_000 }, () => ['x'])],
      { kind: 'too-many-rows', rows: 100_000, most: MOST_ROWS },
    ],
  ])('[SH2] with %s are refused', (_, table, fault) => {
    expect(sheetOf(table)).toEqual({ fault })
  })
})

describe('days in figures', () => {
  it.each([
    ['2/3/27', { year: 2027, first: 2, second: 3 }],
    ['02.03.2027', { year: 2027, first: 2, second: 3 }],
    ['2 - 3 - 27', { year: 2027, first: 2, second: 3 }],
    ['2027-03-02', undefined],
    ['3 May 27', undefined],
    ['2/3', undefined],
  ])('[SH3] %s', (text, figures) => {
    expect(figuresOf(text)).toEqual(figures)
  })

  it.each([
    ['2027/3/2', '2027-03-02'],
    ['2027-03-02T00:00:00.000Z', '2027-03-02'],
    ['2027-03-02 00:00:00', '2027-03-02'],
    ['2/3/2027', undefined],
  ])('[SH3] with the year first: %s', (text, iso) => {
    expect(yearFirst(text)).toBe(iso)
  })

  it('[SH4] say which orders are possible, and whether any is ambiguous', () => {
    expect(figureEvidence(['2/3/27', '25/3/27'])).toEqual({
      ambiguous: 1,
      example: '2/3/27',
      possible: ['day-first'],
    })
    expect(figureEvidence(['3/25/27', '4/4/27'])).toEqual({ ambiguous: 0, possible: ['month-first'] })
    expect(figureEvidence(['3/25/27', '25/3/27']).possible).toEqual([])
    expect(figureEvidence(['', 'soon']).possible).toEqual(FIGURE_ORDERS)
  })

  it('[SH3] are the day that was written, in the order in which it was written', () => {
    const day = fc.record({
      year: fc.integer({ min: 1900, max: 2199 }),
      month: fc.integer({ min: 1, max: 12 }),
      day: fc.integer({ min: 1, max: 28 }),
    })
    fc.assert(
      fc.property(day, fc.constantFrom('/', '.', '-'), (one, between) => {
        const iso = `${one.year}-${String(one.month).padStart(2, '0')}-${String(one.day).padStart(2, '0')}`
        const text = (...parts: number[]) => figuresOf(parts.join(between))!
        expect(isoOf(text(one.day, one.month, one.year), 'day-first')).toBe(iso)
        expect(isoOf(text(one.month, one.day, one.year), 'month-first')).toBe(iso)
      }),
    )
  })
})

describe('columns', () => {
  it.each(SHEET_KINDS)('[SH5] of a sheet of %s are found by our own labels and keys, each once', (kind) => {
    const fields = SHEET_FIELDS[kind]
    const labels = Object.fromEntries(fields.map(({ key, label }) => [key, label]))
    expect(proposedColumns(kind, Object.values(labels))).toEqual(labels)
    const keys = Object.fromEntries(fields.map(({ key }) => [key, key]))
    expect(proposedColumns(kind, Object.values(keys))).toEqual(keys)
  })

  it('[SH5] are found by headings of others, whatever their capitals and strokes', () => {
    expect(
      proposedColumns('certificates', ['SAWYER', 'Certificate', 'date_taken', 'Expiry', 'Seen-by', 'phone']),
    ).toEqual({
      ...{ 'person.name': 'SAWYER', subject: 'Certificate', lastDay: 'Expiry', by: 'Seen-by' },
    })
  })
})
