import {
  day,
  json,
  maybeDay,
  maybeJson,
  maybeRecord,
  maybeText,
  record,
  text,
  truth,
  type Tables,
} from './columns.ts'

/** Organisations, people, and what stands on record of a person beside their cards. */
export const peopleTables = {
  organisations: { anchor: 'organisation', columns: { name: text } },
  people: {
    anchor: 'person',
    columns: { name: text, birthDate: maybeDay, ofAgeFrom: maybeDay, attestedBy: maybeText },
  },
  memberships: {
    anchor: 'membership',
    columns: {
      person: record('people'),
      organisation: record('organisations'),
      unit: maybeRecord('places'),
      capacity: text,
      firstDay: maybeDay,
      lastDay: maybeDay,
      attestedBy: maybeText,
    },
  },
  permissions: {
    anchor: 'permission',
    columns: {
      person: record('people'),
      says: text,
      firstDay: day,
      lastDay: maybeDay,
      attestedBy: maybeText,
    },
  },
  certificates: {
    anchor: 'certificate',
    columns: {
      person: record('people'),
      subject: text,
      issuedBy: maybeText,
      delivery: text,
      firstDay: maybeDay,
      lastDay: maybeDay,
      seen: truth,
      by: maybeText,
    },
  },
  designations: {
    anchor: 'designation',
    columns: {
      person: record('people'),
      role: text,
      book: record('books'),
      level: text,
      workKinds: json,
      sawKind: text,
      firstDay: day,
      lastDay: maybeDay,
      by: text,
    },
  },
  assignments: {
    anchor: 'assignment',
    columns: {
      person: record('people'),
      items: json,
      firstDay: day,
      lastDay: day,
      trainers: json,
      purpose: maybeText,
    },
  },
  disputes: {
    anchor: 'dispute',
    columns: {
      person: record('people'),
      section: text,
      record: text,
      says: text,
      day,
      answerBy: day,
      answered: maybeJson,
    },
  },
  joins: {
    anchor: 'person_join',
    columns: { person: record('people'), stays: record('people'), because: text },
  },
} satisfies Tables<
  | 'disputes'
  | 'joins'
  | 'organisations'
  | 'people'
  | 'memberships'
  | 'permissions'
  | 'certificates'
  | 'designations'
  | 'assignments'
>
