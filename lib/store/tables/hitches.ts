import { day, maybeRecord, record, text, type Tables } from './columns.ts'

/** Hitches, and who is in their crews on which days. */
export const hitchTables = {
  hitches: {
    anchor: 'hitch',
    columns: {
      number: text,
      name: text,
      place: record('places'),
      firstDay: day,
      lastDay: day,
      lead: maybeRecord('people'),
    },
  },
  placements: {
    anchor: 'placement',
    columns: { hitch: record('hitches'), person: record('people'), firstDay: day, lastDay: day },
  },
} satisfies Tables<'hitches' | 'placements'>
