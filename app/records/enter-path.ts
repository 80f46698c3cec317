import type { RecordSection } from '../../lib/usecases/records/record-kinds.ts'
import { recordPath } from './section-words.ts'

/** The address of the form that enters a record of a section, about somebody where they are named. */
export function enterPath(section: RecordSection, person?: string): string {
  if (section === 'people') return '/people/new'
  const path = recordPath(section, 'new')
  return person === undefined ? path : `${path}?person=${encodeURIComponent(person)}`
}
