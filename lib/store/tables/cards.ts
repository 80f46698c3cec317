import { day, json, maybeDay, maybeJson, maybeText, record, text, whole, type Tables } from './columns.ts'

/** Cards, and what later befell them. */
export const cardTables = {
  cards: {
    anchor: 'card',
    columns: {
      number: text,
      line: whole,
      person: record('people'),
      book: record('books'),
      workKinds: json,
      sawKinds: json,
      level: text,
      evaluationDay: maybeDay,
      issuedDay: maybeDay,
      effectiveDay: day,
      lastDay: maybeDay,
      restrictions: json,
      decision: maybeText,
      carriedIn: maybeJson,
    },
  },
  endings: {
    anchor: 'ending',
    columns: { card: record('cards'), kind: text, firstDay: day, decision: text, by: text },
  },
  resolutions: {
    anchor: 'resolution',
    columns: { card: record('cards'), restriction: text, into: json, by: text, reason: text },
  },
  extensions: {
    anchor: 'extension',
    columns: { book: record('books'), runsTo: day, effectiveDay: day, order: text, source: text, of: json },
  },
  suspensions: {
    anchor: 'suspension',
    columns: {
      form: text,
      kind: text,
      subject: json,
      workKinds: maybeJson,
      sawKinds: maybeJson,
      firstDay: day,
      lastDay: maybeDay,
      notices: maybeJson,
      by: text,
      reason: text,
    },
  },
  lifts: {
    anchor: 'lift',
    columns: { suspension: record('suspensions'), day, decision: text, by: text },
  },
} satisfies Tables<'cards' | 'endings' | 'resolutions' | 'extensions' | 'suspensions' | 'lifts'>
