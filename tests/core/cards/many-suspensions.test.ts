import { describe, expect, it } from 'vitest'
import { openRecords } from '../../../lib/core/authority/authority-index.ts'
import { dateOf, toEpochDay } from '../../../lib/core/calendar/dates.ts'
import { lift, suspension } from '../../builders/cards.ts'
import { records } from '../../builders/records.ts'

const MANY = 200_000

describe('as many suspensions and lifts as a file may hold', () => {
  it('[CD14] each is ended by its own lift', () => {
    const place = { kind: 'place', place: 'ford' } as const
    const stopped = suspension('s', { subject: place, firstDay: '2027-05-01' })
    const lifted = lift('s', '2027-06-01')
    const { placeSuspensions } = openRecords(
      records({
        suspensions: Array.from({ length: MANY }, (_, at) => ({ ...stopped, id: `s-${at}` })),
        lifts: Array.from({ length: MANY }, (_, at) => ({ ...lifted, id: `l-${at}`, suspension: `s-${at}` })),
      }),
    )
    const found = placeSuspensions.get('ford') ?? []
    expect(found).toHaveLength(MANY)
    const last = toEpochDay(dateOf('2027-05-31'))
    const wrong = found.filter(
      ({ suspension: { id }, lifts, days }) => lifts[0] !== id.replace('s-', 'l-') || days.last !== last,
    )
    expect(wrong).toEqual([])
  })
})
