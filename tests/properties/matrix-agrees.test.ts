import fc from 'fast-check'
import { expect, it } from 'vitest'
import { askBriefly, openRecords } from '../../lib/core/authority/ask.ts'
import { openMatrix } from '../../lib/core/authority/matrix.ts'
import { plusDays } from '../../lib/core/calendar/dates.ts'
import { rankOf } from '../../lib/core/rulebooks/standing.ts'
import { COMPLEXITIES, WORK_KINDS } from '../../lib/core/rulebooks/words.ts'
import { COMPARED_SEED, RUNS } from '../property-runs.ts'
import { caseOfSeed, seeds } from './program-generator.ts'

it('[AU81] a table gives each pair the standing and the answer it gets alone', () => {
  fc.assert(
    fc.property(seeds(), (seed) => {
      const { records, question } = caseOfSeed(seed)
      const { persons: _everybody, ...asked } = question
      const authority = openRecords(records)
      const later = { ...asked, first: plusDays(asked.first, 3), last: plusDays(asked.last, 5) }
      const typed = WORK_KINDS.flatMap((workKind) =>
        COMPLEXITIES.map((complexity) => ({ ...later, work: { ...asked.work, workKind, complexity } })),
      )
      // A table takes days as they are; an item's own days are cut by whoever makes the table.
      const whole = [asked, later, ...typed].filter((one) => {
        const item = one.work.item === undefined ? undefined : authority.item(one.work.item)
        return (item?.firstDay ?? one.first) <= one.first && one.last <= (item?.lastDay ?? one.last)
      })
      const items = whole.map(({ work, first, last }) => ({ work, first, last }))
      if (items.length === 0) return
      const matrix = openMatrix(authority, items)
      const decided = matrix.decide()
      const rows = authority.people.map((_, row) => matrix.answersOf(row))
      whole.forEach((one, column) => {
        askBriefly(authority, one).forEach((alone, row) => {
          expect(decided[row * items.length + column]).toBe(rankOf(alone.standing))
          expect(rows[row]?.[column]).toEqual(alone)
        })
      })
    }),
    { numRuns: RUNS, seed: COMPARED_SEED },
  )
})
