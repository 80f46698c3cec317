import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOf, fromEpochDay, toEpochDay, type EpochDay } from '../../../lib/core/calendar/dates.ts'
import { checkTiling, type EditionDays } from '../../../lib/core/rulebooks/tiling.ts'
import { RUNS } from '../../property-runs.ts'

function days(id: string, firstDay: string, lastDay?: string, book = 'one'): EditionDays {
  return {
    id,
    book,
    firstDay: dateOf(firstDay),
    ...(lastDay === undefined ? {} : { lastDay: dateOf(lastDay) }),
  }
}

describe('editions of a book', () => {
  it.each([
    ['one open edition', [days('a', '2016-07-19')]],
    ['one that ended', [days('a', '2016-07-19', '2020-12-31')]],
    ['two that touch', [days('a', '2016-07-19', '2020-12-31'), days('b', '2021-01-01')]],
    ['no edition', []],
  ])('[RB12] %s: no problem', (_, editions) => {
    expect(checkTiling(editions)).toEqual([])
  })

  it('[RB12] a gap of one day, and of more', () => {
    expect(checkTiling([days('a', '2016-07-19', '2020-12-30'), days('b', '2021-01-01')])).toEqual([
      { kind: 'gap', book: 'one', before: 'a', after: 'b', firstDay: '2020-12-31', lastDay: '2020-12-31' },
    ])
    expect(checkTiling([days('a', '2016-07-19', '2019-12-31'), days('b', '2021-01-01')])).toMatchObject([
      { firstDay: '2020-01-01', lastDay: '2020-12-31' },
    ])
  })

  it('[RB12] an overlap of one day, and of a whole edition', () => {
    expect(checkTiling([days('a', '2016-07-19', '2021-01-01'), days('b', '2021-01-01')])).toEqual([
      {
        kind: 'overlap',
        book: 'one',
        before: 'a',
        after: 'b',
        firstDay: '2021-01-01',
        lastDay: '2021-01-01',
      },
    ])
    expect(
      checkTiling([days('a', '2016-01-01', '2021-12-31'), days('b', '2017-01-01', '2017-12-31')]),
    ).toMatchObject([{ kind: 'overlap', firstDay: '2017-01-01', lastDay: '2017-12-31' }])
  })

  it('[RB12] a short edition inside a long one does not make a gap after it', () => {
    const editions = [
      days('a', '2016-01-01', '2021-12-31'),
      days('b', '2017-01-01', '2017-12-31'),
      days('c', '2022-01-01'),
    ]
    expect(checkTiling(editions).map(({ kind }) => kind)).toEqual(['overlap'])
  })

  it('[RB13] an open edition that another follows', () => {
    expect(checkTiling([days('a', '2016-07-19'), days('b', '2021-01-01')])).toEqual([
      { kind: 'open-end-not-last', book: 'one', before: 'a', after: 'b', firstDay: '2021-01-01' },
    ])
  })

  it('[RB14] two books are judged apart, in any order', () => {
    const editions = [
      days('y', '2019-01-01', undefined, 'two'),
      days('b', '2021-01-01'),
      days('x', '2018-01-01', '2018-12-31', 'two'),
      days('a', '2016-07-19', '2020-12-31'),
    ]
    expect(checkTiling(editions)).toEqual([])
  })

  it('[RB12] every day from the first on is covered exactly once where no problem is told, and not otherwise', () => {
    const edition = fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 6 }), fc.boolean())
    const origin = toEpochDay(dateOf('2020-01-01'))
    fc.assert(
      fc.property(fc.array(edition, { maxLength: 4 }), (drawn) => {
        const spans = drawn.map(([first, more, isOpen]) => ({
          first,
          last: isOpen ? 30 : first + more,
          isOpen,
        }))
        const editions = spans.map(({ first, last, isOpen }, at) =>
          days(`e${at}`, at0(first), isOpen ? undefined : at0(last)),
        )
        const start = Math.min(...spans.map(({ first }) => first))
        const end = Math.max(...spans.map(({ last }) => last))
        let tiles = true
        for (let day = start; day <= end; day += 1) {
          if (spans.filter(({ first, last }) => first <= day && day <= last).length !== 1) tiles = false
        }
        expect(checkTiling(editions).length === 0).toBe(tiles)
      }),
      { numRuns: RUNS },
    )
    function at0(day: number): string {
      return fromEpochDay((origin + day) as EpochDay)
    }
  })
})
