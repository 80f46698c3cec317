import {
  CAPACITY_OPTIONS,
  DELIVERY_OPTIONS,
  SAW_KIND_OPTIONS,
  WORK_KIND_OPTIONS,
} from './choices-of-words.ts'
import type { FormParts, Leaf } from './parts.ts'

/** Whom a record is about. */
export const PERSON: Leaf = {
  path: 'person',
  label: 'Person',
  hint: 'The name as on record; where two share it, the id.',
  kind: 'named',
  of: 'people',
}
export const BOOK: Leaf = { path: 'book', label: 'Rule book', kind: 'one', of: 'books', none: 'Choose one' }
export const LEVEL: Leaf = { path: 'level', label: 'Level', kind: 'one', of: 'levels', none: 'Choose one' }
export const FIRST_DAY: Leaf = {
  path: 'firstDay',
  label: 'First day',
  hint: 'For example 8 July 2027.',
  kind: 'day',
}
export const LAST_DAY: Leaf = {
  path: 'lastDay',
  label: 'Last day',
  hint: 'A month alone means its last day. Leave it empty where none is stated.',
  kind: 'day',
  isLast: true,
}
const ATTESTED: Leaf = {
  path: 'attestedBy',
  label: 'Attested by',
  hint: 'Who says so, by name.',
  kind: 'text',
}

/** Somebody: their name, and what of their age decides. */
export const PERSON_FORM: FormParts = [
  { path: 'name', label: 'Name', hint: 'As the person writes it, in any script.', kind: 'text' },
  {
    path: 'birthDate',
    label: 'Born on',
    hint: 'Kept only where a rule needs it; whoever may not read it sees the day they are of age from.',
    kind: 'day',
  },
  {
    path: 'ofAgeFrom',
    label: 'Of age from',
    hint: 'The 18th birthday, in place of the day they were born.',
    kind: 'day',
  },
  ATTESTED,
]

/** What of a membership is asked beside whose it is. */
export const MEMBERSHIP_PARTS: FormParts = [
  {
    path: 'organisation',
    label: 'Organisation',
    kind: 'one',
    of: 'organisations',
    none: 'Choose one',
  },
  { path: 'unit', label: 'Unit', kind: 'one', of: 'units', none: 'None stated' },
  { path: 'capacity', label: 'Capacity', kind: 'one', of: CAPACITY_OPTIONS, none: 'Choose one' },
  { ...FIRST_DAY, label: 'First day of the agreement' },
  { ...LAST_DAY, label: 'Last day of the agreement' },
  ATTESTED,
]
export const MEMBERSHIP_FORM: FormParts = [PERSON, ...MEMBERSHIP_PARTS]

/** Two records of one person. */
export const JOIN_FORM: FormParts = [
  { ...PERSON, path: 'stays', label: 'The record that stays' },
  {
    ...PERSON,
    label: 'The record that is joined to it',
    hint: 'What is recorded under it counts for the first, and stays where it is. Where two share the name, the id.',
  },
  {
    path: 'because',
    label: 'How you know that they are one person',
    hint: 'It stands in the history, with your name.',
    kind: 'long-text',
  },
]

export const PERMISSION_FORM: FormParts = [
  PERSON,
  {
    path: 'says',
    label: 'What the guardian says',
    kind: 'one',
    of: [
      { value: 'given', label: 'Given' },
      { value: 'refused', label: 'Refused' },
      { value: 'withdrawn', label: 'Withdrawn' },
    ],
    none: 'Choose one',
  },
  FIRST_DAY,
  { ...LAST_DAY, hint: 'Only a permission that is given has one.' },
  { ...ATTESTED, hint: 'Who saw it or heard it, by name.' },
]

export const CERTIFICATE_FORM: FormParts = [
  PERSON,
  { path: 'subject', label: 'Of what', kind: 'one', of: 'subjects', none: 'Choose one' },
  { path: 'issuedBy', label: 'Issuing organisation', kind: 'text' },
  {
    path: 'delivery',
    label: 'How it was given',
    kind: 'one',
    of: DELIVERY_OPTIONS,
    none: 'Choose one',
  },
  { ...FIRST_DAY, label: 'Day taken' },
  LAST_DAY,
  {
    path: 'seen',
    label: 'Has somebody else seen it?',
    hint: 'What a person states of themself counts once another person has seen the paper. Never write medical detail.',
    kind: 'yes-no',
  },
  {
    path: 'by',
    label: 'Seen or stated by',
    hint: 'Leave it empty where it is you.',
    kind: 'text',
  },
]

export const DESIGNATION_FORM: FormParts = [
  PERSON,
  {
    path: 'role',
    label: 'As',
    kind: 'one',
    of: [
      { value: 'instructor', label: 'Instructor' },
      { value: 'evaluator', label: 'Evaluator' },
    ],
    none: 'Choose one',
  },
  BOOK,
  { ...LEVEL, label: 'For level' },
  { path: 'workKinds', label: 'For', kind: 'some', of: WORK_KIND_OPTIONS },
  { path: 'sawKind', label: 'With', kind: 'one', of: SAW_KIND_OPTIONS, none: 'Choose one' },
  FIRST_DAY,
  LAST_DAY,
]

export const ASSIGNMENT_FORM: FormParts = [
  PERSON,
  {
    path: 'items',
    label: 'Logs, trees and expected work to learn on',
    hint: 'One on each line, by name or id.',
    kind: 'lines',
    of: 'items',
  },
  {
    path: 'trainers',
    label: 'Under which instructors or evaluators',
    hint: 'One on each line, by name or id. They must be designated.',
    kind: 'lines',
    of: 'people',
  },
  FIRST_DAY,
  { ...LAST_DAY, hint: 'A month alone means its last day.' },
  { path: 'purpose', label: 'To what end', kind: 'text' },
]
