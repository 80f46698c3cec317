import { accountTables } from './accounts.ts'
import { cardTables } from './cards.ts'
import { hitchTables } from './hitches.ts'
import type { Column, Tables } from './columns.ts'
import { peopleTables } from './people.ts'
import { programTables } from './program.ts'
import { rulebookTables } from './rulebooks.ts'
import type { StoredName } from './stored-facts.ts'
import { workTables } from './work.ts'

const declared = {
  ...programTables,
  ...rulebookTables,
  ...peopleTables,
  ...workTables,
  ...cardTables,
  ...hitchTables,
  ...accountTables,
} satisfies Tables<StoredName>

/** A field of a fact, by the name that it has in the core, with its column and the name of that. */
export type FieldColumn = { readonly field: string; readonly name: string } & Column

/** The tables of a section, with every name spelled out. */
export type SectionTables = {
  readonly section: StoredName
  /** `card` */
  readonly anchor: string
  /** `card_fact` */
  readonly fact: string
  /** `card_id`, in the table of facts */
  readonly anchorColumn: string
  readonly columns: readonly FieldColumn[]
}

/** What the name of a column says of its unit, or that it names another record. */
const SUFFIXES = {
  text: '',
  whole: '',
  truth: '',
  day: '',
  inches: '_sixteenths',
  feet: '_feet',
  json: '',
  record: '_id',
} as const satisfies Record<Column['kind'], string>

/**
 * Sections in the order in which they are written: the program first, on whose first day of deciding cards depend, and
 * each anchor after those it names (a card's number names a person).
 */
export const STORED_NAMES = Object.keys(declared) as StoredName[]

/** The tables of every section. */
export const TABLES = Object.fromEntries(
  STORED_NAMES.map((section) => [section, spelledOut(section)]),
) as Readonly<Record<StoredName, SectionTables>>

function spelledOut(section: StoredName): SectionTables {
  const { anchor, columns } = declared[section]
  const fields: readonly (readonly [string, Column])[] = Object.entries(columns)
  return {
    section,
    anchor,
    fact: `${anchor}_fact`,
    anchorColumn: `${anchor}_id`,
    columns: fields.map(([field, column]) => ({
      ...column,
      field,
      name: `${snake(field)}${SUFFIXES[column.kind]}`,
    })),
  }
}

function snake(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)
}
