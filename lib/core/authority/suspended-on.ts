import type { EpochDay } from '../calendar/dates.ts'
import type { IndexedSuspension } from '../cards/suspensions.ts'
import { membershipsOn } from '../people/memberships.ts'
import type { Capacity } from '../rulebooks/words.ts'
import type { PersonIndex } from './person-index.ts'

/** Whether a suspension of people is about somebody on a day: organisation and unit ask the memberships of that day. */
export function isAbout(
  { suspension: { subject } }: IndexedSuspension,
  person: PersonIndex,
  day: EpochDay,
  wantAgreement: readonly Capacity[],
): boolean {
  switch (subject.kind) {
    case 'organisation':
      return membershipsOn(person.memberships, day, wantAgreement).some(
        ({ membership }) => membership.organisation === subject.organisation,
      )
    case 'unit':
      return membershipsOn(person.memberships, day, wantAgreement).some(
        ({ membership }) => membership.unit === subject.unit,
      )
    case 'person':
    case 'card':
    case 'place':
    case 'work-kind':
    case 'saw-kind':
    case 'everybody':
      return true
  }
}
