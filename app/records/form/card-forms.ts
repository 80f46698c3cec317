import { COMPLEXITY_OPTIONS, SAW_KIND_OPTIONS, WORK_KIND_OPTIONS } from './choices-of-words.ts'
import type { FormParts, Leaf, Rows } from './parts.ts'
import { BOOK, FIRST_DAY, LAST_DAY, LEVEL, PERSON } from './people-forms.ts'

const RESTRICTION_KINDS = [
  { value: 'greatest-diameter', label: 'Greatest diameter' },
  { value: 'greatest-complexity', label: 'Greatest complexity' },
  { value: 'places', label: 'Only in places' },
  { value: 'species', label: 'Only species' },
  { value: 'double-bucking-only', label: 'Double bucking only' },
  { value: 'supervisor-only', label: 'Only with a supervisor' },
  { value: 'no-felling', label: 'No felling' },
]
const WORDS = { value: 'words', label: 'In words, not understood here' }

const restrictionLeaves = (kinds: readonly { value: string; label: string }[]): readonly Leaf[] => [
  { path: 'kind', label: 'Kind', kind: 'one', of: kinds, none: 'None' },
  {
    path: 'says',
    label: 'What it says',
    hint: `Inches for a diameter; ${COMPLEXITY_OPTIONS.map(({ label }) => label.toLowerCase()).join(', ')} for a complexity; places or species one on each line. The other kinds need nothing here.`,
    kind: 'long-text',
    rows: 2,
  },
  {
    path: 'workKinds',
    label: 'Only for',
    hint: 'Neither means all work of the card.',
    kind: 'some',
    of: WORK_KIND_OPTIONS,
  },
]

const RESTRICTIONS: Rows = {
  kind: 'rows',
  path: 'restrictions',
  label: 'Restriction',
  hint: 'Words that no rule can read make the answer “not on record” until a certifying official says what they mean.',
  leaves: restrictionLeaves([...RESTRICTION_KINDS, WORDS]),
  spare: 2,
  are: 'restrictions',
}

/** One line of a card that was issued elsewhere or before this program decided itself. */
export const CARD_FORM: FormParts = [
  PERSON,
  { path: 'number', label: 'Card number', hint: 'As printed.', kind: 'text' },
  {
    path: 'line',
    label: 'Line',
    hint: 'A card with several lines is entered line by line: 1, 2, …',
    kind: 'number',
  },
  BOOK,
  LEVEL,
  {
    path: 'workKinds',
    label: 'For',
    kind: 'some',
    of: WORK_KIND_OPTIONS,
    instead: { value: 'not-stated', label: 'The card does not say' },
  },
  { path: 'sawKinds', label: 'With', kind: 'some', of: SAW_KIND_OPTIONS },
  { path: 'effectiveDay', label: 'Effective from', kind: 'day' },
  { ...LAST_DAY, hint: 'As printed. A month alone means its last day.' },
  { path: 'evaluationDay', label: 'Day of the evaluation', kind: 'day' },
  { path: 'issuedDay', label: 'Day of issue', kind: 'day' },
  {
    kind: 'group',
    path: 'carriedIn',
    label: 'Carried in',
    hint: 'Who issued the card, and who has seen the paper.',
    leaves: [
      { path: 'issuer', label: 'Issued by', kind: 'text' },
      { path: 'number', label: 'Its number there', kind: 'text' },
      { path: 'seenBy', label: 'Paper seen by', kind: 'text' },
      {
        path: 'lastReconciled',
        label: 'Last compared with its issuer on',
        kind: 'day',
      },
    ],
  },
  RESTRICTIONS,
]

export const EXTENSION_FORM: FormParts = [
  {
    kind: 'one-of',
    path: 'of',
    label: 'Which cards it extends',
    ways: [
      {
        value: 'card',
        label: 'One card',
        leaves: [{ path: 'card', label: 'Card', kind: 'one', of: 'cards', none: 'Choose one' }],
      },
      {
        value: 'window',
        label: 'Every card of the book that ends within these days',
        leaves: [
          { ...FIRST_DAY, label: 'From' },
          { ...LAST_DAY, label: 'Through' },
        ],
      },
    ],
  },
  BOOK,
  { path: 'runsTo', label: 'They run to', kind: 'day', isLast: true },
  { path: 'effectiveDay', label: 'The order counts from', kind: 'day' },
  { path: 'order', label: 'The order', hint: 'Its number or title.', kind: 'text' },
  { path: 'source', label: 'Where it stands', kind: 'text' },
]

export const SUSPENSION_FORM: FormParts = [
  {
    path: 'form',
    label: 'What it is',
    kind: 'one',
    of: [
      { value: 'suspension', label: 'A suspension' },
      { value: 'stand-down', label: 'A stand-down' },
    ],
    none: 'Choose one',
  },
  {
    path: 'kind',
    label: 'Because of',
    hint: 'Only an administrative one may have a last day; each other ends by a decision to lift it.',
    kind: 'one',
    of: [
      { value: 'unsafe-act', label: 'An unsafe act' },
      { value: 'incident', label: 'An incident' },
      { value: 'competence', label: 'Competence' },
      { value: 'administrative', label: 'Administrative grounds' },
    ],
    none: 'Choose one',
  },
  {
    kind: 'one-of',
    path: 'subject',
    label: 'Whom or what it stops',
    ways: [
      { value: 'person', label: 'One person', leaves: [PERSON] },
      {
        value: 'card',
        label: 'One card, all of its lines',
        leaves: [{ path: 'number', label: 'Card number', kind: 'named', of: 'cardNumbers' }],
      },
      {
        value: 'organisation',
        label: 'Everybody of an organisation',
        leaves: [
          {
            path: 'organisation',
            label: 'Organisation',
            kind: 'one',
            of: 'organisations',
            none: 'Choose one',
          },
        ],
      },
      {
        value: 'unit',
        label: 'Everybody of a unit',
        leaves: [{ path: 'unit', label: 'Unit', kind: 'one', of: 'units', none: 'Choose one' }],
      },
      {
        value: 'place',
        label: 'All work at a place',
        leaves: [{ path: 'place', label: 'Place', kind: 'one', of: 'places', none: 'Choose one' }],
      },
      {
        value: 'work-kind',
        label: 'A kind of work',
        leaves: [{ path: 'workKind', label: 'Work', kind: 'one', of: WORK_KIND_OPTIONS, none: 'Choose one' }],
      },
      {
        value: 'saw-kind',
        label: 'A kind of saw',
        leaves: [{ path: 'sawKind', label: 'Saw', kind: 'one', of: SAW_KIND_OPTIONS, none: 'Choose one' }],
      },
      { value: 'everybody', label: 'Everybody', leaves: [] },
    ],
  },
  {
    path: 'workKinds',
    label: 'Only for this work',
    hint: 'Neither means all work.',
    kind: 'some',
    of: WORK_KIND_OPTIONS,
  },
  {
    path: 'sawKinds',
    label: 'Only with these saws',
    hint: 'None means with any.',
    kind: 'some',
    of: SAW_KIND_OPTIONS,
  },
  { ...FIRST_DAY, hint: 'It covers the whole of this day, which may lie in the past.' },
  LAST_DAY,
  { path: 'reason', label: 'Reason', kind: 'long-text' },
]

export const RESOLUTION_FORM: FormParts = [
  {
    path: 'words',
    label: 'Words on a card',
    kind: 'one',
    of: 'words',
    none: 'Choose one',
    parts: ['card', 'restriction'],
  },
  {
    kind: 'rows',
    path: 'into',
    label: 'What they mean',
    hint: 'Restrictions that a rule can read, in place of the words. None at all says that the words restrict nothing here.',
    leaves: restrictionLeaves(RESTRICTION_KINDS),
    spare: 3,
    are: 'restrictions',
  },
  { path: 'reason', label: 'How you came to know', kind: 'long-text' },
]
