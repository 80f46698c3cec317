import type { Sections } from '../authority/records.ts'

/** The name of a section of facts. */
export type SectionName = keyof Sections

/** A fact of any section. */
export type Fact = Sections[SectionName]

/** The facts of every section, all versions of them. */
export type FactsBySection = { readonly [Name in SectionName]: readonly Sections[Name][] }

/** The sections of facts in the order in which a file holds them. */
export const SECTION_NAMES = [
  'books',
  'editions',
  'confirmations',
  'organisations',
  'places',
  'people',
  'memberships',
  'permissions',
  'certificates',
  'designations',
  'cards',
  'endings',
  'resolutions',
  'extensions',
  'suspensions',
  'lifts',
  'items',
  'expectedWork',
  'ratings',
  'raises',
  'assignments',
  'cautions',
  'hitches',
  'placements',
  'disputes',
  'joins',
] as const satisfies readonly SectionName[]
