import type { Records } from '../../lib/core/authority/records.ts'
import { dayNumber } from './days.ts'

const DAY_WRITTEN = /\d{4}-\d{2}-\d{2}/g
/** No rule asks for an age above this. */
const OLDEST_ASKED = 120
/** No rule calls a rating good for longer. */
const LONGEST_GOOD = 3660

/**
 * The last day on which anything can change: the latest day written anywhere in the records, the person's latest
 * birthday that a rule of age asks for, the day the latest rating gets old, and one more for the day after a last day.
 */
export function quietAfter(records: Records, person: string): number {
  const written = JSON.stringify(records).match(DAY_WRITTEN) ?? []
  const ages = records.editions.flatMap(({ rules }) =>
    rules.flatMap((rule) => {
      if (rule.kind === 'age.least') return [rule.years]
      if (rule.kind === 'age.capacity') return [rule.under, rule.from ?? 0]
      return rule.kind === 'supervision' ? [rule.ofAge] : []
    }),
  )
  const good = records.editions.flatMap(({ rules }) =>
    rules.flatMap((rule) => (rule.kind === 'complexity.provisional' ? [rule.days] : [])),
  )
  const years = Math.min(OLDEST_ASKED, Math.max(0, ...ages)) + 1
  const days = [
    ...written.map(dayNumber),
    ...records.people.flatMap(({ id, birthDate }) =>
      id !== person || birthDate === undefined ? [] : [dayNumber(birthDate) + Math.ceil(years * 365.25)],
    ),
    ...records.ratings.map(({ day }) => dayNumber(day) + Math.min(LONGEST_GOOD, Math.max(0, ...good))),
  ]
  return Math.max(...days) + 2
}
