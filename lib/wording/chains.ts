import type { SpokenBy } from '../core/authority/explain.ts'
import { momentText } from './days.ts'
import type { Names } from './names.ts'
import type { ShownRecord } from './record-index.ts'

/** What speaks for a person, as the opening of a chain of reasons. */
export function spokenByText(spokenBy: SpokenBy, names: Names): string {
  switch (spokenBy.by) {
    case 'card':
      return spokenBy.level === undefined
        ? `${names.card(spokenBy.card)} decides.`
        : `${names.card(spokenBy.card)} decides, as level ${spokenBy.level} of the governing book.`
    case 'assignment':
      return 'a training assignment decides.'
    case 'nothing':
      return 'no card and no training assignment speaks for this work.'
  }
}

/** What else is on record beside what speaks, as the opening of what it would give. */
export function besideText(beside: SpokenBy, names: Names): string {
  switch (beside.by) {
    case 'card':
      return beside.level === undefined
        ? `${names.card(beside.card)} counts as no level of the governing book.`
        : `${names.card(beside.card)} counts as level ${beside.level} of the governing book.`
    case 'assignment':
      return 'a training assignment is on record.'
    case 'nothing':
      return 'no card and no training assignment speaks for this work.'
  }
}

/** In which entry a record was recorded, by whom and when, and which one it corrects. */
export function recordedText({ entry, actor, statedAt, corrects }: Omit<ShownRecord, 'says'>): string {
  const when = statedAt === undefined ? '' : `, ${momentText(statedAt)}`
  const corrected = corrects === undefined ? '' : `; corrects what entry ${corrects} recorded`
  return `entry ${entry}, ${actor}${when}${corrected}`
}
