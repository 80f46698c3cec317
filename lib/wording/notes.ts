import type { Note, NoteKind } from '../core/authority/answer.ts'
import { dayText, spansText } from './days.ts'
import { joinedByAnd } from './lists.ts'
import type { Names } from './names.ts'
import { complexityWords } from './work-words.ts'

type NoteOf<Kind extends NoteKind> = Extract<Note, { kind: Kind }>

/** Something to know that changes no answer: one plain sentence. */
export function noteSentence(note: Note, names: Names): string {
  // The key picks the function for its own kind; TypeScript cannot follow that across the union.
  const sentence = SENTENCES[note.kind] as (note: Note, names: Names) => string
  return sentence(note, names)
}

/** The days a note is about: `8 July 2027 and 10 to 12 July 2027`. */
export function noteDaysText(note: Note): string {
  return spansText(note.days)
}

const SENTENCES: { [Kind in NoteKind]: (note: NoteOf<Kind>, names: Names) => string } = {
  'rule-not-confirmed': (note) =>
    `${note.rule === undefined ? 'A rule' : `The rule ${note.rule.rule}`} is written from memory, and nobody has confirmed it against its source.`,
  'sources-disagree': (note) =>
    `Sources disagree${note.rule === undefined ? '' : ` about the rule ${note.rule.rule}`}; the stricter one counts here, and another says: ${note.other}`.replace(
      /\.?$/,
      '.',
    ),
  'valid-only-by-a-later-order': (note) =>
    `These days are covered only by an order of ${dayText(note.effectiveDay)}, with which the card runs to ${dayText(note.runsTo)}; it was made after them.`,
  'successor-not-held': (note) =>
    `The book names a successor, “${note.name}” of ${dayText(note.day)}, whose text is not held here.`,
  'delivery-not-stated': (note, names) =>
    `How the class for ${names.subject(note.subject)} was given is not stated.`,
  'longer-than-term': (note) =>
    `The card was carried in with the last day ${dayText(note.lastDay)}; the term of its book ends on ${dayText(note.termLastDay)}.`,
  'rating-provisional': (note) =>
    `The rating is provisional (${joinedByAnd(note.because.map((reason) => PROVISIONAL[reason]))}): rated ${complexityWords[note.rated]}, planned as ${complexityWords[note.planned]}.`,
}

const PROVISIONAL: { [Reason in NoteOf<'rating-provisional'>['because'][number]]: string } = {
  photo: 'made from a photo',
  told: 'made from what was told',
  'rater-not-independent': 'made by somebody not on their own for such work that day',
  old: 'older than the book lets a rating stand',
}
