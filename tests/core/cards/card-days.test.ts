import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  cardStateOn,
  indexCard,
  lastCountingDay,
  type CardRecords,
} from '../../../lib/core/cards/card-index.ts'
import { extendedDays } from '../../../lib/core/cards/extensions.ts'
import { dateOf, fromEpochDay, toEpochDay } from '../../../lib/core/calendar/dates.ts'
import { toSpan } from '../../../lib/core/calendar/spans.ts'
import { card, ending, extension } from '../../builders/cards.ts'
import { RUNS } from '../../property-runs.ts'

const nothing: CardRecords = { endings: [], extensions: [], resolutions: [], suspensions: [] }
const stateOn = (indexed: ReturnType<typeof indexCard>, day: string) =>
  cardStateOn(indexed, toEpochDay(dateOf(day)))

describe('days', () => {
  const plain = indexCard(card('p-1', 'B'), nothing)

  it.each([
    ['2025-04-13', 'not-begun'],
    ['2025-04-14', 'in-force'],
    ['2028-04-13', 'in-force'],
    ['2028-04-14', 'ended'],
  ])('[CD1] from 14 April 2025 through 13 April 2028: on %s it is %s', (day, state) => {
    expect(stateOn(plain, day)).toBe(state)
  })

  it('[CD2] without a last day it has begun and is not shown to be in force', () => {
    const { lastDay: _none, ...open } = card('p-1', 'B')
    const indexed = indexCard(open, nothing)
    expect(stateOn(indexed, '2025-04-13')).toBe('not-begun')
    expect(stateOn(indexed, '2025-04-14')).toBe('no-last-day')
    expect(stateOn(indexed, '2199-12-31')).toBe('no-last-day')
  })

  it.each([
    [['2027-07-09'], '2027-07-08', '2027-07-09'],
    [['2027-09-01', '2027-07-09'], '2027-07-08', '2027-07-09'],
    [['2028-06-01'], '2028-04-13', '2028-04-14'],
  ])('[CD3] ended by decisions from %j: the last day is %s', (firstDays, last, ended) => {
    const endings = firstDays.map((day, index) => ending('card-p-1', day, { id: `ending-${index}` }))
    const indexed = indexCard(card('p-1', 'B'), { ...nothing, endings })
    expect(fromEpochDay(lastCountingDay(indexed))).toBe(last)
    expect(stateOn(indexed, last)).toBe('in-force')
    expect(stateOn(indexed, ended)).toBe('ended')
  })
})

describe('two decisions from one day', () => {
  const DAY = '2027-07-09'
  const spoke = (...endings: ReturnType<typeof ending>[]) =>
    [endings, [...endings].reverse()].map(
      (some) => indexCard(card('p-1', 'B'), { ...nothing, endings: some }).ending?.id,
    )
  const of = (id: string, said: Parameters<typeof ending>[2] = {}) => ending('card-p-1', DAY, { id, ...said })

  it.each([
    ['withdrawn', 'reduced'],
    ['reduced', 'replaced'],
    ['replaced', 'surrendered'],
    ['withdrawn', 'surrendered'],
  ] as const)('[CD3] %s speaks before %s, in whichever order they stand', (graver, lesser) => {
    expect(spoke(of('z', { kind: graver, recordedIn: 9 }), of('a', { kind: lesser }))).toEqual(['z', 'z'])
  })

  it('[CD3] of one kind the first recorded speaks, then the first by id', () => {
    expect(spoke(of('z'), of('a', { recordedIn: 9 }))).toEqual(['z', 'z'])
    expect(spoke(of('b'), of('a'))).toEqual(['a', 'a'])
  })

  it('[CD3] a decision from an earlier day speaks before a graver one', () => {
    const earlier = ending('card-p-1', '2027-07-08', { id: 'earlier', kind: 'surrendered' })
    expect(spoke(of('later', { kind: 'withdrawn' }), earlier)).toEqual(['earlier', 'earlier'])
  })
})

describe('orders that extend', () => {
  const old = card('p-1', 'B', { effectiveDay: '2016-10-02', lastDay: '2019-10-01' })
  const window = { kind: 'window', firstDay: '2019-10-01', lastDay: '2022-12-31' } as const
  const blanket = extension('blanket', { of: window, runsTo: '2022-12-31', effectiveDay: '2021-10-08' })
  const single = (runsTo: string, id = 'single') =>
    extension(id, { of: { kind: 'card', card: 'card-p-1' }, runsTo, effectiveDay: '2019-01-01' })
  const lastDay = (of: typeof old, orders: ReturnType<typeof extension>[]) => {
    const { last } = extendedDays(of, orders)
    return last === undefined ? undefined : fromEpochDay(last)
  }

  it('[CD4] the latest single extension counts, and none before the own last day', () => {
    expect(lastDay(old, [single('2019-12-31', 'a'), single('2020-03-31', 'b')])).toBe('2020-03-31')
    expect(lastDay(old, [single('2019-06-30')])).toBe('2019-10-01')
  })

  it.each([
    ['2019-09-30', '2019-09-30'],
    ['2019-10-01', '2022-12-31'],
    ['2022-12-31', '2022-12-31'],
    ['2023-01-01', '2023-01-01'],
  ])(
    '[CD5] a window from 1 October 2019 through 31 December 2022: a card through %s runs to %s',
    (own, last) => {
      expect(lastDay({ ...old, lastDay: dateOf(own) }, [blanket])).toBe(last)
    },
  )

  it('[CD5] of several windows the latest day counts', () => {
    const longer = extension('longer', { of: window, runsTo: '2023-06-30', effectiveDay: '2022-01-01' })
    expect(lastDay(old, [longer, blanket])).toBe('2023-06-30')
  })

  it('[CD6] the day a window runs to is not looked up in another window', () => {
    const next = extension('next', {
      of: { kind: 'window', firstDay: '2022-12-01', lastDay: '2023-12-31' },
      runsTo: '2024-12-31',
    })
    expect(lastDay(old, [blanket, next])).toBe('2022-12-31')
  })

  it('[CD7] a single extension past the window takes nothing away', () => {
    const far = extension('far', { of: window, runsTo: '2024-12-31', effectiveDay: '2021-10-08' })
    expect(lastDay(old, [far])).toBe('2024-12-31')
    expect(lastDay(old, [far, single('2023-03-31')])).toBe('2024-12-31')
  })

  it('[CD7] one more order never gives fewer days, whichever it is', () => {
    const dates = fc.integer({ min: 2018, max: 2025 }).map((year) => `${year}-07-01`)
    const orders = fc.array(
      fc.record({
        runsTo: dates,
        effectiveDay: dates,
        window: fc.option(fc.tuple(dates, dates), { nil: undefined }),
      }),
      { minLength: 1, maxLength: 5 },
    )
    fc.assert(
      fc.property(orders, dates, (some, own) => {
        const made = some.map(({ runsTo, effectiveDay, window: days }, at) =>
          extension(`order-${at}`, {
            runsTo,
            effectiveDay,
            of:
              days === undefined
                ? { kind: 'card', card: 'card-p-1' }
                : { kind: 'window', firstDay: days[0], lastDay: days[1] },
          }),
        )
        const held = { ...old, lastDay: dateOf(own) }
        const all = lastDay(held, made) ?? ''
        for (let at = 0; at < made.length; at += 1)
          expect(all >= (lastDay(held, made.toSpliced(at, 1)) ?? '')).toBe(true)
      }),
      { numRuns: RUNS },
    )
  })

  it('[CD8] an order of another book or of another card changes nothing', () => {
    const elsewhere = extension('elsewhere', {
      book: 'cooperator-crosscut',
      of: window,
      runsTo: '2022-12-31',
    })
    const other = extension('other', { of: { kind: 'card', card: 'card-p-2' }, runsTo: '2030-01-01' })
    expect(lastDay(old, [elsewhere, other])).toBe('2019-10-01')
  })

  it('[CD9] the days that only a later order covers are told with it', () => {
    const { laterOrders } = extendedDays(old, [blanket])
    expect(laterOrders.map(({ days, ...order }) => ({ ...toSpan(days), ...order }))).toEqual([
      {
        first: '2019-10-02',
        last: '2021-10-07',
        effectiveDay: '2021-10-08',
        runsTo: '2022-12-31',
        extension: 'blanket',
      },
    ])
  })
})
