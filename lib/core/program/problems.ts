import type { CalendarDate } from '../calendar/dates.ts'
import type { Instant } from '../calendar/instants.ts'
import type { ScriptAlike } from '../kernel/look-alikes.ts'
import type { EditionFault } from '../rulebooks/edition-check.ts'
import type { Complexity } from '../rulebooks/words.ts'

/** What was found, or wanted, where a value is of the wrong type. */
export type JsonType = 'text' | 'number' | 'whole-number' | 'true-or-false' | 'list' | 'object' | 'nothing'

/** What a JSON text may hold at the place where it stops being JSON. */
export type JsonExpected =
  | 'value'
  | 'key'
  | 'colon'
  | 'comma-or-end'
  | 'end-of-text'
  | 'closing-quote'
  | 'escape'
  | 'escaped-control-character'
  | 'number'

/** What a text must look like where a pattern says so. */
export type TextForm = 'id' | 'level' | 'rule-id' | 'name' | 'card-number' | 'text' | 'other'

/** What a reference may lead to: a section of the file, or a part of a record of one. */
export type ReferenceTo =
  | 'books'
  | 'editions'
  | 'rules'
  | 'levels'
  | 'organisations'
  | 'places'
  | 'people'
  | 'cards'
  | 'card-numbers'
  | 'restrictions'
  | 'suspensions'
  | 'items'
  | 'cautions'
  | 'hitches'

/** Faults of the text itself, before anything in it is read. */
type TextFigures =
  | { kind: 'too-large'; mostBytes: number }
  | { kind: 'not-text'; line: number; column: number }
  | { kind: 'empty-text' }
  | { kind: 'not-json'; expected: JsonExpected; line: number; column: number }
  | { kind: 'nested-too-deep'; most: number }
  | { kind: 'forbidden-key'; key: string }
  | { kind: 'duplicate-key'; key: string }
  | { kind: 'too-many-values'; most: number }

/** Faults of one value, whatever else the file holds. */
type ShapeFigures =
  | { kind: 'format-unknown'; expected: string }
  | { kind: 'unknown-key'; key: string; nearest?: string }
  | { kind: 'missing-key'; key: string }
  | { kind: 'wrong-type'; expected: JsonType; found: JsonType }
  /** `allowed` as JSON writes them, without the quotes of texts. */
  | { kind: 'not-one-of'; allowed: readonly string[]; nearest?: string }
  | { kind: 'text-empty' }
  | { kind: 'text-too-long'; most: number; letters: number }
  | { kind: 'badly-written'; form: TextForm }
  /** A character that nobody sees: its code, `U+200B`, and which letter of the text it is, from 1. */
  | { kind: 'hidden-character'; code: string; at: number }
  | { kind: 'number-too-large' }
  | { kind: 'number-outside'; least?: number; most?: number; exclusive: boolean }
  | { kind: 'too-few'; least: number }
  | { kind: 'too-many'; most: number; count: number }
  | { kind: 'not-a-day' }
  | { kind: 'no-such-day' }
  | { kind: 'year-outside'; first: number; last: number }
  | { kind: 'not-an-instant' }
  | { kind: 'not-a-sixteenth' }
  | { kind: 'time-zone-unknown' }
  | { kind: 'last-day-not-administrative' }
  /** Of a guardian's refusal or withdrawal. */
  | { kind: 'last-day-not-given' }
  /** A refusal of a schema that has no kind of its own; `says` is its text. */
  | { kind: 'otherwise-refused'; says: string }

/** Faults of a record in itself. */
type RecordFigures =
  | {
      kind: 'span-backwards'
      firstField: string
      lastField: string
      firstDay: CalendarDate
      lastDay: CalendarDate
    }
  | { kind: 'range-backwards'; leastField: string; mostField: string; least: number; most: number }
  | { kind: 'repeated-in-list'; what: 'restriction' | 'record'; id: string; other: string }
  /** A fault of an edition in itself, as the room of rule books tells it. */
  | { kind: 'edition-fault'; fault: EditionFault }
  | {
      kind: 'of-age-contradicts-birth'
      birthDate: CalendarDate
      ofAgeFrom: CalendarDate
      reached: CalendarDate
    }
  | { kind: 'born-after-last-entry'; birthDate: CalendarDate; lastEntry: CalendarDate }
  /** Carried in from the program itself, on a day from which it decides. */
  | { kind: 'carried-in-from-here'; effectiveDay: CalendarDate; firstDayOfDeciding: CalendarDate }
  | { kind: 'card-without-decision'; effectiveDay: CalendarDate; firstDayOfDeciding: CalendarDate }

/** Faults of the entries and of the times of knowing. `other` is the path of the other record. */
type KnowingFigures =
  | { kind: 'entry-number'; expected: number; found: number }
  | { kind: 'entry-earlier'; statedAt: Instant; previous: Instant }
  | { kind: 'no-such-entry'; field: 'recordedIn' | 'supersededIn'; n: number; entries: number }
  | { kind: 'superseded-too-early'; recordedIn: number; supersededIn: number }
  | { kind: 'twin'; id: string; recordedIn: number; other: string }
  | { kind: 'two-at-once'; id: string; from: number; other: string }
  | { kind: 'two-heirs'; id: string; supersedes: number; other: string }
  /** `entries` are the numbers of the versions of the circle, from the least. */
  | { kind: 'supersession-circle'; id: string; entries: readonly number[] }
  | { kind: 'supersedes-nothing'; id: string; supersedes: number; versions: readonly number[] }
  /** The version corrected ceases in the entry in which its heir is recorded; absent where it never ceases. */
  | { kind: 'heir-in-another-entry'; id: string; recordedIn: number; supersededIn?: number; other: string }
  | { kind: 'anchor-changed'; id: string; field: string; before: string; now: string; other: string }
  | { kind: 'number-of-two-people'; number: string; person: string; otherPerson: string; other: string }
  | { kind: 'two-crews'; person: string; firstDay: CalendarDate; lastDay: CalendarDate; other: string }
  | { kind: 'joined-to-itself'; person: string }
  | { kind: 'joined-twice'; person: string; other: string }
  | { kind: 'joined-through'; stays: string; other: string }
  | { kind: 'joined-of-two-births'; person: string; stays: string }
  | { kind: 'line-of-two-cards'; number: string; line: number; otherCard: string; other: string }
  /** Items and expected work share their ids. */
  | { kind: 'id-in-two-sections'; id: string; other: string }

/** Faults between records. `knownAt` is the entry as known at which the fault first stands. */
type ReferenceFigures =
  | { kind: 'refers-to-nothing'; to: ReferenceTo; id: string; nearest?: string }
  | { kind: 'refers-to-later'; to: ReferenceTo; id: string; recordedIn: number; knownFrom: number }
  | { kind: 'not-a-unit'; id: string; found: 'program' | 'place' }
  | { kind: 'restriction-not-words'; restriction: string }
  | { kind: 'extension-of-another-book'; book: string; card: string; cardBook: string }
  | { kind: 'lift-before-suspension'; day: CalendarDate; firstDay: CalendarDate }
  | { kind: 'places-circle'; places: readonly string[]; knownAt: number }
  | { kind: 'places-too-deep'; most: number; knownAt: number }
  | {
      kind: 'place-misplaced'
      place: 'program' | 'unit' | 'place'
      under: 'nothing' | 'program' | 'unit' | 'place'
    }
  | { kind: 'place-withdrawn-under'; place: string; knownAt: number }
  | { kind: 'place-books-overlap'; books: readonly string[]; first: CalendarDate; last: CalendarDate }
  | { kind: 'no-root-place'; knownAt: number }
  | { kind: 'two-root-places'; places: readonly string[]; knownAt: number }
  | { kind: 'book-without-edition'; book: string }
  /** In a book file, which has no entries, `knownAt` is absent. */
  | { kind: 'editions-gap'; book: string; first: CalendarDate; last: CalendarDate; knownAt?: number }
  | {
      kind: 'editions-overlap'
      book: string
      editions: readonly string[]
      first: CalendarDate
      /** Absent where neither edition ends. */
      last?: CalendarDate
      knownAt?: number
    }

/** What may be wrong with a program file or a book file, told apart by `kind`. */
export type ProblemFigures =
  | TextFigures
  | ShapeFigures
  | RecordFigures
  | KnowingFigures
  | ReferenceFigures
  /** How many problems are not listed. It stands last. */
  | { kind: 'more-problems'; count: number }

export type ProblemKind = ProblemFigures['kind']

/**
 * One fault of a file: the path of the value, like `cards[12].lastDay` (empty for the file itself), the value as JSON
 * shortened to 60 letters (absent where there is none), and what is wrong with it.
 */
export type ProgramProblem = { path: string; value?: string } & ProblemFigures

/** What may be doubtful about a program, told apart by `kind`. */
export type DoubtFigures =
  | { kind: 'longer-than-term'; lastDay: CalendarDate; termLastDay: CalendarDate }
  /**
   * `within` so many days the card's book wants it; `days` from the last reconciliation until the day of the last
   * entry, absent where none is on record.
   */
  | { kind: 'not-reconciled'; within: number; lastReconciled?: CalendarDate; days?: number }
  /** On a day that cannot be: after the day of the last entry, or before the card's effective day. */
  | { kind: 'reconciled-after-last-entry'; lastReconciled: CalendarDate; lastEntry: CalendarDate }
  | { kind: 'reconciled-before-card'; lastReconciled: CalendarDate; effectiveDay: CalendarDate }
  | { kind: 'card-without-last-day' }
  | { kind: 'work-kinds-not-stated' }
  | { kind: 'words-unresolved'; restriction: string; text: string }
  | { kind: 'delivery-not-stated'; subject: string }
  | { kind: 'certificate-not-seen'; subject: string }
  | { kind: 'certificate-without-days'; subject: string; missing: 'first-day' | 'last-day' | 'both' }
  /** `observed` is what the observations give by the edition in force at the item's place on the rating's day. */
  | {
      kind: 'rating-against-observations'
      item: string
      stated: Complexity | 'not-rated'
      observed: Complexity | 'not-rated'
    }
  /** The edition's worksheet has no such factor or option. */
  | { kind: 'observations-not-readable'; item: string; edition: string }
  /** Names that readers cannot tell apart. The first twenty by id, and how many more there are. */
  | { kind: 'same-name'; name: string; people: readonly string[]; more?: number }
  /** Numbers of cards that differ only in capitals, blanks, dashes or letters that look alike; likewise the first twenty. */
  | { kind: 'numbers-alike'; number: string; others: readonly string[]; more?: number }
  /** Letters of several scripts that look alike in one number. */
  | { kind: 'number-mixes-scripts'; number: string; scripts: readonly ScriptAlike[] }
  | { kind: 'age-not-on-record' }
  | { kind: 'capacity-not-stated' }
  | { kind: 'agreement-open-ended'; firstDay: CalendarDate }
  | { kind: 'administrative-open-ended'; firstDay: CalendarDate }
  | { kind: 'stand-down-waits'; firstDay: CalendarDate }
  | { kind: 'said-to-be-wrong'; answerBy: CalendarDate }
  /** Withdrawn as wrong in an entry, and never lifted: it counts on no day since. */
  | { kind: 'suspension-withdrawn'; firstDay: CalendarDate; entry: number }
  /** Seen, by nobody named or by the holder alone; of age, attested by nobody named. */
  | { kind: 'seen-by-nobody-else'; subject: string }
  | { kind: 'age-not-attested' }
  /** Recorded again in `entry`, after the lift that ends it was recorded in `liftEntry`. */
  | { kind: 'lifted-before-recorded'; firstDay: CalendarDate; entry: number; lift: string; liftEntry: number }
  | { kind: 'resolved-by-holder'; card: string; restriction: string; by: string }
  /** Words that were found to restrict nothing. */
  | { kind: 'resolved-into-nothing'; card: string; restriction: string }
  /** Of the same id as a part of a rule book that ships: the keys, and of an edition the rules, that differ. */
  | { kind: 'differs-from-shipped'; what: ShippedPart; book: string; parts: readonly string[]; more?: number }
  | { kind: 'edition-not-shipped'; book: string }
  /** What ships with the book and is not in the program. */
  | { kind: 'shipped-part-missing'; what: ShippedPart; book: string; parts: readonly string[] }

/** What a rule book that ships consists of. */
export type ShippedPart = 'book' | 'edition' | 'order' | 'caution'

export type DoubtKind = DoubtFigures['kind']

/**
 * Something in a program, as now known, that is no error and that somebody should look at: the path and id of the
 * record, the person it is about where it is about one, and what is doubtful.
 */
export type Doubt = { path: string; id: string; person?: string } & DoubtFigures
