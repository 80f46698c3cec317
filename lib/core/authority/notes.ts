import { fromEpochDay, toEpochDay, type EpochDay } from '../calendar/dates.ts'
import { lastDayOfTerm } from '../calendar/anniversaries.ts'
import { hasDay, joinSpans, toSpan, type DaySpan, type Span } from '../calendar/spans.ts'
import { cardStateOn, type IndexedCard } from '../cards/card-index.ts'
import { byText, sortedTexts } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { Rule } from '../rulebooks/rules.schema.ts'
import type { PlannedComplexity } from '../work/ratings.ts'
import type { Note } from './answer.ts'
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
  for (const rule of [grant, leastAge])
    if (rule !== undefined) notes.push(...notConfirmed(authority, edition, rule))
  const rests = new Set<Rule>()
  for (const rule of [grant, leastAge]) if (rule?.disagrees !== undefined) rests.add(rule)
  for (const finding of judged.findings) {
    const rule = edition.rule(finding.rule.rule)
    if (rule?.disagrees !== undefined) rests.add(rule)
  }
  for (const rule of rests)
    if (rule.disagrees !== undefined)
      notes.push({
        kind: 'sources-disagree',
        other: rule.disagrees,
        rule: edition.ref(rule),
        records: [],
        days: [],
      })
  const successor = edition.edition.successor
  if (successor !== undefined && day > toEpochDay(successor.day))
    notes.push({ kind: 'successor-not-held', ...successor, records: [edition.edition.id], days: [] })
  if (speaker?.by === 'card') notes.push(...cardNotes(authority, speaker.indexed, day))
  for (const doubt of judged.doubts) notes.push({ kind: 'delivery-not-stated', ...doubt, days: [] })
  const rated = ratingNote(edition, planned)
  if (rated !== undefined) notes.push(rated)
  return notes
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
  const termLastDay = card.carriedIn === undefined ? undefined : termOf(authority, indexed)
  if (termLastDay !== undefined && card.lastDay !== undefined && card.lastDay > fromEpochDay(termLastDay))
    notes.push({
      kind: 'longer-than-term',
      lastDay: card.lastDay,
      termLastDay: fromEpochDay(termLastDay),
      records: [card.id],
      days: [],
    })
  return notes
}

function termOf(authority: Authority, indexed: IndexedCard): EpochDay | undefined {
  const { terms } = authority
  if (!terms.has(indexed)) terms.set(indexed, lastDayByTerm(authority, indexed))
  return terms.get(indexed)
}

/** The last day that the term of a card's own book proposes, by the edition in force on its effective day. */
function lastDayByTerm(authority: Authority, { card, effective }: IndexedCard): EpochDay | undefined {
  const editions = authority.editionsOf(card.book)
  const earliest = [...editions].sort((left, right) => left.days.first - right.days.first)[0]
  const edition = editions.find(({ days }) => hasDay(days, effective)) ?? earliest
  const level = edition?.level(card.level)?.level
  const rule = edition?.all('term').find(({ levels }) => level !== undefined && levels.includes(level))
  return rule === undefined ? undefined : toEpochDay(lastDayOfTerm(card.effectiveDay, rule.term, rule.end))
}

/** A note with what makes it equal to another. */
export type KeyedNote = { key: string; note: DayNote }

/** The notes of a day, each once, in the order of their keys; the same note by several records keeps them all. */
export function keyNotes(notes: readonly DayNote[]): KeyedNote[] {
  const byKey = new Map<string, DayNote>()
  for (const note of notes) {
    const key = noteKey(note)
    const known = byKey.get(key)
    byKey.set(key, known === undefined ? note : { ...known, records: [...known.records, ...note.records] })
  }
  return [...byKey.entries()]
    .map(([key, note]) => ({ key, note }))
    .sort((left, right) => byText(left.key, right.key))
}

/** The notes of days on which nothing changes. */
export function notesOver(notes: readonly KeyedNote[], span: Span): Note[] {
  const days = [span]
  return notes.map(({ note }) => ({ ...note, days }))
}

/** The notes of the days of an answer, each once, with the days it is about, joined. */
export function joinNotes(runs: readonly (DaySpan & { notes: readonly KeyedNote[] })[]): Note[] {
  const joined = new Map<string, { note: DayNote; records: string[]; days: DaySpan[] }>()
  for (const { first, last, notes } of runs) {
    for (const { key, note } of notes) {
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
