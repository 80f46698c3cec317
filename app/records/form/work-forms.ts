import { COMPLEXITY_OPTIONS, HANDS_OPTIONS, RATING_OPTIONS, WORK_KIND_OPTIONS } from './choices-of-words.ts'
import type { FormParts, Leaf } from './parts.ts'
import { BOOK, FIRST_DAY, LAST_DAY } from './people-forms.ts'

const NAME: Leaf = { path: 'name', label: 'Name', kind: 'text' }
const DIAMETER: Leaf = {
  path: 'diameter',
  label: 'Diameter, inches',
  hint: 'Where it is to be cut, for example 22 1/2. Whole sixteenths.',
  kind: 'inches',
}

export const ORGANISATION_FORM: FormParts = [NAME]

export const PLACE_FORM: FormParts = [
  NAME,
  {
    path: 'kind',
    label: 'What it is',
    kind: 'one',
    of: [
      { value: 'place', label: 'A place' },
      { value: 'unit', label: 'A unit' },
      { value: 'program', label: 'The whole program' },
    ],
    none: 'Choose one',
  },
  { path: 'parent', label: 'Lies in', kind: 'one', of: 'places', none: 'Nothing above it' },
  {
    kind: 'rows',
    path: 'books',
    label: 'Rule book in force there',
    hint: 'Without one, that of the place above it is.',
    leaves: [BOOK, FIRST_DAY, LAST_DAY],
    spare: 1,
  },
  {
    kind: 'group',
    path: 'box',
    label: 'Where it lies',
    hint: 'Decimal degrees; south and west are negative. All four, or none.',
    leaves: [
      { path: 'south', label: 'South edge', kind: 'degrees' },
      { path: 'north', label: 'North edge', kind: 'degrees' },
      { path: 'west', label: 'West edge', kind: 'degrees' },
      { path: 'east', label: 'East edge', kind: 'degrees' },
    ],
  },
]

export const PLACE: Leaf & { kind: 'one' } = {
  path: 'place',
  label: 'Place',
  kind: 'one',
  of: 'places',
  none: 'None stated',
}

const COMMON_OF_WORK: readonly Leaf[] = [
  NAME,
  { path: 'workKind', label: 'Work', kind: 'one', of: WORK_KIND_OPTIONS, none: 'Choose one' },
  DIAMETER,
  PLACE,
  { ...FIRST_DAY, hint: 'Leave both days empty where any day will do.' },
  LAST_DAY,
  {
    path: 'hands',
    label: 'Saw',
    kind: 'one',
    of: HANDS_OPTIONS,
    none: 'Not stated',
  },
  { path: 'species', label: 'Species', kind: 'text' },
  { path: 'list', label: 'Hitch', kind: 'one', of: 'hitches', none: 'Of no hitch' },
  {
    path: 'trailOpen',
    label: 'Is the trail open there?',
    hint: 'Not stated counts as open.',
    kind: 'yes-no',
  },
  {
    path: 'mayRoll',
    label: 'May it roll or slide?',
    hint: 'Not stated counts as yes.',
    kind: 'yes-no',
  },
]

export const ITEM_FORM: FormParts = [
  ...COMMON_OF_WORK,
  { path: 'height', label: 'Height, feet', hint: 'Of a tree to be felled.', kind: 'number' },
  {
    kind: 'group',
    path: 'approval',
    label: 'Approval to cut',
    hint: 'Who approved cutting this tree, as far as local rules want it. Authority is not safety: an approval does not say that it should be cut.',
    leaves: [
      { path: 'by', label: 'Approved by', kind: 'text' },
      { path: 'day', label: 'On', kind: 'day' },
      { path: 'conditions', label: 'On what conditions', kind: 'long-text' },
    ],
  },
]

export const EXPECTED_WORK_FORM: FormParts = [
  ...COMMON_OF_WORK,
  { path: 'least', label: 'At least how many', kind: 'number' },
  { path: 'most', label: 'At most how many', kind: 'number' },
  {
    path: 'complexity',
    label: 'At most how complex',
    kind: 'one',
    of: COMPLEXITY_OPTIONS,
    none: 'Choose one',
  },
]

const ITEM: Leaf = { path: 'item', label: 'Log or tree', kind: 'one', of: 'items', none: 'Choose one' }

/** How somebody came to see a log or tree that they rate. */
export const HOW_SEEN: Leaf = {
  path: 'how',
  label: 'How it was seen',
  hint: 'From a photo or from what was told it is provisional, and planned one class higher.',
  kind: 'one',
  of: [
    { value: 'on-site', label: 'On site' },
    { value: 'photo', label: 'From a photo' },
    { value: 'told', label: 'From what was told' },
  ],
  none: 'Choose one',
}

export const RATING_FORM: FormParts = [
  ITEM,
  { path: 'complexity', label: 'Rated', kind: 'one', of: RATING_OPTIONS, none: 'Choose one' },
  {
    path: 'rater',
    label: 'Rated by',
    hint: 'The name as on record, or the id.',
    kind: 'named',
    of: 'people',
  },
  { path: 'day', label: 'On', kind: 'day' },
  HOW_SEEN,
  { path: 'reason', label: 'What made it so', kind: 'long-text' },
]

export const RAISE_FORM: FormParts = [
  ITEM,
  {
    path: 'complexity',
    label: 'Raised to',
    kind: 'one',
    of: COMPLEXITY_OPTIONS,
    none: 'Choose one',
  },
  { path: 'by', label: 'Raised by', hint: 'The name as on record, or the id.', kind: 'named', of: 'people' },
  { path: 'day', label: 'On', kind: 'day' },
  { ...FIRST_DAY, label: 'Counts from', hint: 'Leave it empty where it counts on all days.' },
  { path: 'reason', label: 'Why', kind: 'long-text' },
]
