import type { CalendarDate } from '../core/calendar/dates.ts'
import { dayText } from './days.ts'

/** What somebody may be told of a person's age: what is kept, or only what decides. */
export type ToldAge =
  | { kind: 'born'; day: CalendarDate }
  | { kind: 'of-age-from'; day: CalendarDate; attestedBy?: string }
  | { kind: 'of-age' }
  | { kind: 'not-on-record' }

/** An age as a phrase: `of age from 3 October 2028`. */
export function ageText(age: ToldAge): string {
  switch (age.kind) {
    case 'born':
      return `born ${dayText(age.day)}`
    case 'of-age-from': {
      const by = age.attestedBy === undefined ? '' : `, attested by ${age.attestedBy}`
      return `of age from ${dayText(age.day)}${by}`
    }
    case 'of-age':
      return 'of age'
    case 'not-on-record':
      return 'age not on record'
  }
}
