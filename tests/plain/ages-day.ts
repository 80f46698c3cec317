import type { Person } from '../../lib/core/people/people.schema.ts'
import { birthday, dayNumber } from './days.ts'

/** Whether an age is reached, is known not to be reached, or is not shown by what is on record. */
export type Age = 'reached' | 'under' | 'not-shown'

const OF_AGE = 18

/** The age of a person on a day. "Of age from" tells of 18 and of nothing else. */
export function ageOn(person: Person | undefined, years: number, day: number): Age {
  if (person?.birthDate !== undefined) return day >= birthday(person.birthDate, years) ? 'reached' : 'under'
  if (person?.ofAgeFrom === undefined) return 'not-shown'
  if (day >= dayNumber(person.ofAgeFrom)) return years <= OF_AGE ? 'reached' : 'not-shown'
  return years >= OF_AGE ? 'under' : 'not-shown'
}

/** Whether anything of a person's age is on record. */
export function hasAge(person: Person | undefined): boolean {
  return person?.birthDate !== undefined || person?.ofAgeFrom !== undefined
}
