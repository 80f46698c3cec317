import {
  day,
  inches,
  maybeDay,
  maybeFeet,
  maybeJson,
  maybeRecord,
  maybeText,
  maybeTruth,
  record,
  text,
  whole,
  type Tables,
} from './columns.ts'

const itemColumns = {
  name: text,
  workKind: text,
  diameter: inches,
  place: maybeRecord('places'),
  firstDay: maybeDay,
  lastDay: maybeDay,
  hands: maybeText,
  species: maybeText,
  trailOpen: maybeTruth,
  mayRoll: maybeTruth,
  list: maybeText,
} as const

/** Places, and the work in them. */
export const workTables = {
  places: {
    anchor: 'place',
    columns: { name: text, kind: text, parent: maybeRecord('places'), books: maybeJson, box: maybeJson },
  },
  items: { anchor: 'item', columns: { ...itemColumns, height: maybeFeet, approval: maybeJson } },
  expectedWork: {
    anchor: 'expected_work',
    columns: { ...itemColumns, least: whole, most: whole, complexity: text },
  },
  // What is rated may be expected work: its anchor stands among the items too.
  ratings: {
    anchor: 'rating',
    columns: {
      item: record('items'),
      complexity: text,
      observations: maybeJson,
      rater: record('people'),
      day,
      how: text,
      reason: maybeText,
    },
  },
  raises: {
    anchor: 'raise',
    columns: {
      item: record('items'),
      complexity: text,
      by: record('people'),
      day,
      firstDay: maybeDay,
      reason: text,
    },
  },
} satisfies Tables<'places' | 'items' | 'expectedWork' | 'ratings' | 'raises'>
