import { dayOfAge } from '../calendar/anniversaries.ts'
import { toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import type { Person } from './people.schema.ts'

/** The age that "of age" stands for. */
const OF_AGE = 18

/** What the record says of an age on a day. */
export type AgeSays = 'reached' | 'below' | 'unknown'

/** A person's ages as the record shows them; the day each is reached is worked out once. */
export class Ages {
  private readonly reached = new Map<number, EpochDay>()
  private readonly ofAgeFrom: EpochDay | undefined

  constructor(private readonly person: Person) {
    this.ofAgeFrom = person.ofAgeFrom === undefined ? undefined : toEpochDay(person.ofAgeFrom)
  }

  /** Whether neither a birth date nor "of age from" is on record. */
  get isMissing(): boolean {
    return this.person.birthDate === undefined && this.ofAgeFrom === undefined
  }

  /**
   * Whether an age is reached on a day. "Of age from" is the 18th birthday: it shows 18 and less from that day,
   * 18 and more not before it; anything else it leaves unknown.
   */
  on(years: number, day: EpochDay): AgeSays {
    const birthDate = this.person.birthDate
    if (birthDate !== undefined) return day >= this.dayOf(birthDate, years) ? 'reached' : 'below'
    if (this.ofAgeFrom === undefined) return 'unknown'
    if (day >= this.ofAgeFrom) return years <= OF_AGE ? 'reached' : 'unknown'
    return years >= OF_AGE ? 'below' : 'unknown'
  }

  /** The days on which what is known of the ages changes. */
  changes(years: readonly number[]): EpochDay[] {
    const birthDate = this.person.birthDate
    if (birthDate !== undefined) return years.map((age) => this.dayOf(birthDate, age))
    return this.ofAgeFrom === undefined ? [] : [this.ofAgeFrom]
  }

  private dayOf(birthDate: CalendarDate, years: number): EpochDay {
    const known = this.reached.get(years)
    if (known !== undefined) return known
    const day = toEpochDay(dayOfAge(birthDate, years))
    this.reached.set(years, day)
    return day
  }
}
