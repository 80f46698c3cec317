import { describe, expect, it } from 'vitest'
import { everyRow, readOpenRows, withRow } from '../../app/(authority)/open-rows.ts'

const read = (open: string, person = '') => readOpenRows({ open, person })

describe('which rows are open, in the address', () => {
  it.each([
    ['', '', { every: false, but: [] }],
    ['', 'p-one', { every: true, but: [] }],
    ['p-one', '', { every: false, but: ['p-one'] }],
    [' p-one, ,p-two,', '', { every: false, but: ['p-one', 'p-two'] }],
    ['all', '', { every: true, but: [] }],
    ['all,-p-one', 'p-one', { every: true, but: ['p-one'] }],
  ])('%j about %j', (open, person, rows) => {
    expect(read(open, person)).toEqual(rows)
  })

  it.each(['', 'p-one', 'p-two,p-three', 'all', 'all,-p-one', 'all,-p-two'])(
    'from %j a row is opened and shut again, and every other stays as it was',
    (open) => {
      const isOpen = (rows: string | undefined, person: string) => {
        const { every, but } = read(rows ?? '')
        return every !== but.includes(person)
      }
      for (const wanted of [true, false]) {
        const words = withRow(read(open), 'p-one', wanted)
        expect(isOpen(words, 'p-one')).toBe(wanted)
        for (const other of ['p-two', 'p-three', 'p-four']) {
          expect(isOpen(words, other)).toBe(isOpen(open, other))
        }
      }
    },
  )

  it('nothing stands in the address where no row is open', () => {
    expect(withRow(read('p-one'), 'p-one', false)).toBeUndefined()
    expect(everyRow(false)).toBeUndefined()
    expect(read(everyRow(true) ?? '')).toEqual({ every: true, but: [] })
  })
})
