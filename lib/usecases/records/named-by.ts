import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Program } from '../../core/program/program.schema.ts'
import { SECTION_NAMES, type Fact } from '../../core/program/sections.ts'
import type { RecordSection } from './record-kinds.ts'

/** The fields in which records of other sections name a record of each section, wherever they stand in a fact. */
const NAMING_FIELDS: Readonly<Record<RecordSection, readonly string[]>> = {
  people: ['person', 'trainers', 'rater', 'by'],
  cards: ['card'],
  suspensions: ['suspension'],
  items: ['item', 'items'],
  expectedWork: ['item', 'items'],
  places: ['parent', 'unit', 'place', 'places'],
  organisations: ['organisation'],
  memberships: [],
  permissions: [],
  certificates: [],
  extensions: [],
  resolutions: [],
  designations: [],
  assignments: [],
  ratings: [],
  raises: [],
}

/** How many records as now known name a record, so that it cannot go without leaving them about nothing. */
export function countNamedBy(program: Program, n: number, section: RecordSection, id: string): number {
  const fields = NAMING_FIELDS[section]
  if (fields.length === 0) return 0
  return SECTION_NAMES.reduce(
    (sum, name) =>
      sum +
      (program[name] as readonly Fact[]).filter(
        (fact) => isKnownAt(fact, n) && !(name === section && fact.id === id) && names(fact, fields, id),
      ).length,
    0,
  )
}

function names(value: unknown, fields: readonly string[], id: string): boolean {
  if (Array.isArray(value)) return value.some((each) => names(each, fields, id))
  if (typeof value !== 'object' || value === null) return false
  return Object.entries(value).some(([key, each]) =>
    fields.includes(key) && (Array.isArray(each) ? each.includes(id) : each === id)
      ? true
      : names(each, fields, id),
  )
}
