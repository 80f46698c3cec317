import type { PersonPage } from '../../lib/usecases/people/person.ts'

/** The day from which time left is counted: today, and none where the page is told as of another day. */
export function countedFrom({
  day,
  today,
}: Pick<PersonPage, 'day' | 'today'>): PersonPage['today'] | undefined {
  return day === today ? today : undefined
}
