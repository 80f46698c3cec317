import { toEpochDay, type EpochDay } from '../calendar/dates.ts'
import { hasDay, joinSpans, toSpan, type DaySpan } from '../calendar/spans.ts'
import { cardStateOn, type IndexedCard } from '../cards/card-index.ts'
import { longerThanTerm, type LongerByRule } from '../cards/terms.ts'
import { byText, sortedTexts } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleRef } from '../rulebooks/rule-ref.ts'
import type { Rule } from '../rulebooks/rules.schema.ts'
import type { PlannedComplexity } from '../work/ratings.ts'
import type { Finding, Note } from './answer.ts'
import type { Authority } from './authority-index.ts'
import { noteKey } from './finding-order.ts'
import type { Case, DayJudgement } from './judge-day.ts'

/** A note about one day; its days are filled in when the days of an answer are joined. */
export type DayNote = Note & { days: readonly [] }

/** What to know about a day beside its findings; none of it changes standing. */
export function notesOn({ authority, asked }: Case, judged: DayJudgement, day: EpochDay): DayNote[] {
  const { edition, planned } = asked.pieceOn(day)
  if (edition === undefined) return []
  const notes: DayNote[] = []
  const speaker = judged.speaker
  const grant = speaker?.by === 'card' ? speaker.verdict?.grant : undefined
  const leastAge = edition.leastAges.get(asked.work.sawKind)
  const rules = grant === undefined ? [leastAge] : [grant, leastAge]
  for (const rule of rules) if (rule !== undefined) notes.push(...notConfirmed(authority, edition, rule))
  for (const rule of disagreedWith(edition, rules, judged.findings))
    notes.push(sourcesDisagree(edition.ref(rule), rule.disagrees))
  const successor = successorNote(edition)
  if (successor !== undefined && day > successor.after) notes.push(successor.note)
  if (speaker?.by === 'card') notes.push(...cardNotes(authority, speaker.indexed, day))
  for (const doubt of judged.doubts) notes.push({ kind: 'delivery-not-stated', ...doubt, days: [] })
  const rated = ratingNote(edition, planned)
  if (rated !== undefined) notes.push(rated)
  return notes
}

type SuccessorNote = { after: EpochDay; note: DayNote }

/** Made once for an edition: everybody's answers after the day tell the same. */
const successorNotes = new WeakMap<EditionIndex, SuccessorNote>()

function successorNote(index: EditionIndex): SuccessorNote | undefined {
  const { successor, id } = index.edition
  if (successor === undefined) return undefined
  let made = successorNotes.get(index)
  if (made === undefined) {
    const note: DayNote = { kind: 'successor-not-held', ...successor, records: [id], days: [] }
    made = { after: toEpochDay(successor.day), note }
    successorNotes.set(index, made)
  }
  return made
}

/** The note that an item is planned on a provisional rating. */
export function ratingNote(edition: EditionIndex, { rating }: PlannedComplexity): DayNote | undefined {
  if (rating === undefined || rating.because.length === 0) return undefined
  return {
    kind: 'rating-provisional',
    because: rating.because,
    rated: rating.rated,
    planned: rating.planned,
    rule: edition.ref(edition.one('complexity.provisional')),
    records: [rating.id],
    days: [],
  }
}

/** Each once: the rules that a day rests on of which the sources disagree. */
function disagreedWith(
  edition: EditionIndex,
  rules: readonly (Rule | undefined)[],
  findings: readonly Finding[],
): readonly Disagreed[] {
  let found = NONE_DISAGREED
  for (const rule of rules) found = withDisagreed(found, rule)
  for (const { rule } of findings)
    if (rule !== undefined) found = withDisagreed(found, edition.rule(rule.rule))
  return found
}

type Disagreed = Rule & { disagrees: string }

const NONE_DISAGREED: readonly Disagreed[] = []

function withDisagreed(found: readonly Disagreed[], rule: Rule | undefined): readonly Disagreed[] {
  return isDisagreed(rule) && !found.includes(rule) ? [...found, rule] : found
}

function isDisagreed(rule: Rule | undefined): rule is Disagreed {
  return rule?.disagrees !== undefined
}

function sourcesDisagree(rule: RuleRef, other: string): DayNote {
  return { kind: 'sources-disagree', other, rule, records: [], days: [] }
}

function notConfirmed(authority: Authority, edition: EditionIndex, rule: Rule): DayNote[] {
  if (rule.mark !== 'from-memory' || authority.isConfirmed(edition.edition.id, rule)) return []
  return [{ kind: 'rule-not-confirmed', rule: edition.ref(rule), records: [], days: [] }]
}

function cardNotes(authority: Authority, indexed: IndexedCard, day: EpochDay): DayNote[] {
  const notes: DayNote[] = []
  const { card } = indexed
  const isInForce = cardStateOn(indexed, day) === 'in-force'
  for (const order of indexed.laterOrders)
    if (isInForce && hasDay(order.days, day))
      notes.push({
        kind: 'valid-only-by-a-later-order',
        effectiveDay: order.effectiveDay,
        runsTo: order.runsTo,
        records: [card.id, order.extension],
        days: [],
      })
  const longer = outlasting(authority, indexed)
  if (longer === undefined) return notes
  const { disagrees, ...figures } = longer
  notes.push({ kind: 'longer-than-term', ...figures, records: [card.id], days: [] })
  if (disagrees !== undefined) notes.push(sourcesDisagree(longer.rule, disagrees))
  return notes
}

/** Worked out once for a card: every day of an answer asks for it. */
function outlasting(authority: Authority, indexed: IndexedCard): LongerByRule | undefined {
  const { terms } = authority
  if (!terms.has(indexed))
    terms.set(indexed, longerThanTerm(indexed.card, authority.editionsOf(indexed.card.book)))
  return terms.get(indexed)
}

/** The notes of a day, each once, sorted by their keys; the same note by several records keeps them all. */
export function sortedNotes(notes: readonly DayNote[]): readonly DayNote[] {
  if (notes.length < 2) return notes
  const byKey = new Map<string, DayNote>()
  for (const note of notes) {
    const key = noteKey(note)
    const known = byKey.get(key)
    byKey.set(key, known === undefined ? note : { ...known, records: [...known.records, ...note.records] })
  }
  return [...byKey.entries()].sort(([left], [right]) => byText(left, right)).map(([, note]) => note)
}

/** The notes of the days of an answer, each once, with the days it is about, joined. */
export function joinNotes(runs: readonly (DaySpan & { notes: readonly DayNote[] })[]): Note[] {
  const joined = new Map<string, { note: DayNote; records: string[]; days: DaySpan[] }>()
  for (const { first, last, notes } of runs) {
    for (const note of notes) {
      const key = noteKey(note)
      const known = joined.get(key)
      if (known === undefined) joined.set(key, { note, records: [...note.records], days: [{ first, last }] })
      else {
        known.records.push(...note.records)
        known.days.push({ first, last })
      }
    }
  }
  return [...joined.entries()]
    .sort(([left], [right]) => byText(left, right))
    .map(([, { note, records, days }]) => ({
      ...note,
      records: sortedTexts(records),
      days: joinSpans(days).map(toSpan),
    }))
}
