import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import { SECTION_NAMES, type Fact } from '../../core/program/sections.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { RecordFact, RecordSection } from './record-kinds.ts'

/** The fields in which records of other sections name a record of each section, wherever they stand in a fact. */
export const NAMING_FIELDS: Readonly<Record<RecordSection, readonly string[]>> = {
  people: ['person', 'trainers', 'rater', 'by', 'lead', 'stays'],
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
  // Work names its hitch as its list.
  hitches: ['hitch', 'list'],
  placements: [],
  joins: [],
}

/** How many records as now known name a record, so that it cannot go without leaving them about nothing. */
export function countNamedBy(
  { program, n, accounts, roles }: Snapshot,
  section: RecordSection,
  record: RecordFact,
): number {
  const fields = NAMING_FIELDS[section]
  const isNaming = (fact: Version) =>
    isKnownAt(fact, n) &&
    (names(fact, fields, record.id) ||
      // A suspension of a card names its number, under which other lines may stand.
      ('number' in record && names(fact, ['number'], record.number) && 'subject' in fact))
  const facts = SECTION_NAMES.flatMap((name) =>
    (program[name] as readonly Fact[]).filter((fact) => !(name === section && fact.id === record.id)),
  )
  return [...facts, ...accounts, ...roles].filter(isNaming).length
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
