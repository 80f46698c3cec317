import type { PersonPage } from '../../../lib/usecases/people/person.ts'
import type { Stratum } from '../../../lib/usecases/people/strata.ts'
import { dayText } from '../../../lib/wording/days.ts'
import { addressWith } from '../../_parts/address.ts'

/** The address of the question that a stratum answers, about this person alone and as of the same day and knowing. */
export function stratumQuestion(
  { work }: Stratum,
  { id, day }: PersonPage,
  known: string | undefined,
): string {
  const { workKind, sawKind, complexity, diameter, hands, species, place } = work
  return addressWith(
    '/',
    {},
    {
      work: workKind,
      across: String(diameter),
      complexity,
      saw: sawKind,
      first: dayText(day),
      last: dayText(day),
      place,
      hands,
      species,
      person: id,
      known,
    },
  )
}
