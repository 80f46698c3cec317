/** What a sheet may be of. */
export const SHEET_KINDS = ['people', 'memberships', 'certificates', 'cards', 'items', 'hitches'] as const
export type SheetKind = (typeof SHEET_KINDS)[number]

/** Lists from which a cell names one. */
export type NamedList = 'organisations' | 'units' | 'books' | 'levels' | 'subjects' | 'places' | 'hitches'
/** Words of the trade of which a cell holds one. */
export type WordList = 'capacities' | 'deliveries' | 'hands'

/** How a cell is read. */
export type CellReading =
  | { kind: 'text' }
  | { kind: 'day'; isBirth?: true }
  /** A day, or a month alone, of which the last day is meant. */
  | { kind: 'last-day' }
  | { kind: 'inches' }
  | { kind: 'whole'; most: number }
  | { kind: 'feet' }
  | { kind: 'yes-no' }
  | { kind: 'named'; of: NamedList }
  | { kind: 'word'; of: WordList }
  | { kind: 'work-kinds' }
  | { kind: 'work-kind' }
  | { kind: 'saw-kinds' }
  | { kind: 'person' }

/** What a column may be of. */
export type SheetField = {
  /** Its name in a map of columns. */
  key: string
  /** As people call it. */
  label: string
  /** Other headings under which it is found, folded. */
  also: readonly string[]
  reads: CellReading
  /** A new record cannot be without it. */
  needed?: true
  /** What a person is known by; beside the name it is only looked at where it was chosen. */
  identifies?: 'number' | 'name' | 'born' | 'card'
  /** Where it goes: the record itself, the membership of a person who is new, or nowhere. */
  of?: 'membership' | 'nothing'
}

/** Ways to find the person of a row that has no number of ours. */
export const MATCH_BY = ['name', 'born', 'card'] as const
export type MatchBy = (typeof MATCH_BY)[number]
