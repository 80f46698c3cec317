import type { CalendarDate } from '../../core/calendar/dates.ts'
import { writeInches, type Inches } from '../../core/kernel/measures.ts'
import type { CellReading } from '../../core/sheets/sheet-kinds.ts'
import { dayText } from '../../wording/days.ts'
import { subjectText, type Names } from '../../wording/names.ts'

/** A value of a record as people read it in a table; nothing stated is the empty text. */
export function cellText(value: unknown, reading: CellReading, names: Names): string {
  if (value === undefined) return ''
  switch (reading.kind) {
    case 'day':
    case 'last-day':
      return dayText(value as CalendarDate)
    case 'inches':
      return writeInches(value as Inches)
    case 'yes-no':
      return value === true ? 'yes' : 'no'
    case 'work-kinds':
    case 'saw-kinds':
      return (Array.isArray(value) ? value : [value]).map((word) => spaced(plain(word))).join(', ')
    case 'word':
      return spaced(plain(value))
    case 'person':
      return names.person(plain(value))
    case 'named':
      return nameInList(plain(value), reading.of, names)
    case 'text':
    case 'whole':
    case 'feet':
    case 'work-kind':
      return textOf(value)
  }
}

function nameInList(id: string, of: string, names: Names): string {
  switch (of) {
    case 'organisations':
      return names.organisation(id)
    case 'units':
    case 'places':
      return names.place(id)
    case 'books':
      return names.book(id)
    case 'subjects':
      return subjectText(id)
    case 'hitches':
      return names.hitch(id)
    default:
      return id
  }
}

/** Restrictions in words stand under each other. */
function textOf(value: unknown): string {
  if (!Array.isArray(value)) return plain(value)
  return value
    .map((one: unknown) => (typeof one === 'object' && one !== null && 'text' in one ? plain(one.text) : ''))
    .filter((text) => text !== '')
    .join('; ')
}

function plain(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? `${value}` : ''
}

function spaced(word: string): string {
  return word.replaceAll('-', ' ')
}
