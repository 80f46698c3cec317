import type { Note, NoteFigures } from '../../lib/core/authority/answer.ts'
import type { RuleRef } from '../../lib/core/rulebooks/rule-ref.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Rule, RuleOf } from '../../lib/core/rulebooks/rules.schema.ts'
import type { Asked } from './asked.ts'
import { editionOn, ruleOf, rulesOf, sameLevel } from './books-day.ts'
import { lastDayUnder, ordersThatTouch, type ReadCard } from './card-days.ts'
import { dayNumber, dayText, joinDays, monthsLater } from './days.ts'
import { canonicalJson, compareTexts, ruleRef } from './findings.ts'
import { leastAgeRules } from './memberships-day.ts'
import type { OneDay } from './one-day.ts'
import type { PlannedDay } from './ratings-day.ts'

type NoteOfDay = { rule?: RuleRef; records: readonly string[] } & NoteFigures

/** The notes of some days in order, each once with the days it is about. */
export function joinNotes(byDay: readonly { day: number; notes: readonly NoteOfDay[] }[]): Note[] {
  const joined = new Map<string, { note: NoteOfDay; days: number[] }>()
  for (const { day, notes } of byDay) {
    for (const note of notes) {
      const { rule, records: _records, ...figures } = note
      const key = `${note.kind} ${rule?.rule ?? ''} ${canonicalJson(figures)}`
      const known = joined.get(key)
      if (known === undefined) joined.set(key, { note, days: [day] })
      else if (known.days.at(-1) !== day) known.days.push(day)
    }
  }
  return [...joined]
    .sort(([left], [right]) => compareTexts(left, right))
    .map(([, { note, days }]) => ({ ...note, days: joinDays(days) }))
}

/** What is to be known of one day beside the standing. */
export function notesOnDay(asked: Asked, day: number, one: OneDay, planned: PlannedDay): NoteOfDay[] {
  const { edition, card } = one
  if (edition === undefined) return []
  const { records } = asked
  const notes: NoteOfDay[] = []

  const restedOn: Rule[] = [...leastAgeRules(asked, edition)]
  if (card?.grant !== undefined) restedOn.push(card.grant)
  for (const rule of restedOn) {
    if (rule.mark !== 'from-memory' || isConfirmed(records, edition, rule)) continue
    notes.push({ kind: 'rule-not-confirmed', rule: ruleRef(edition, rule), records: [] })
  }

  const found = new Set(one.findings.map((finding) => finding.rule?.rule))
  for (const rule of new Set([...restedOn, ...edition.rules.filter((other) => found.has(other.id))])) {
    if (rule.disagrees === undefined) continue
    notes.push({ kind: 'sources-disagree', other: rule.disagrees, rule: ruleRef(edition, rule), records: [] })
  }

  const { successor } = edition
  if (successor !== undefined && day > dayNumber(successor.day)) {
    notes.push({ kind: 'successor-not-held', name: successor.name, day: successor.day, records: [] })
  }

  for (const { rule, subject, records: ids } of one.certificates?.deliveryNotStated ?? []) {
    notes.push({ kind: 'delivery-not-stated', subject, rule: ruleRef(edition, rule), records: ids })
  }

  if (card !== undefined) {
    if (card.state === 'in-force') notes.push(...laterOrderNotes(card.read, day))
    notes.push(...termNotes(records, card.read))
  }

  if (planned.provisional !== undefined) {
    const { rating, because, rated, planned: class_ } = planned.provisional
    const rule = ruleRef(edition, ruleOf(edition, 'complexity.provisional'))
    notes.push({ kind: 'rating-provisional', because, rated, planned: class_, rule, records: [rating] })
  }
  return notes
}

function isConfirmed(records: Records, edition: Edition, rule: Rule): boolean {
  return records.confirmations.some((one) => one.edition === edition.id && one.rule === rule.id)
}

/** A day that the card would not reach with the orders in effect by then: by the first orders to reach it. */
function laterOrderNotes({ card, orders }: ReadCard, day: number): NoteOfDay[] {
  const reaches = (by: number) =>
    (lastDayUnder(
      card,
      orders.filter((order) => dayNumber(order.effectiveDay) <= by),
    ) ?? -Infinity) >= day
  if (reaches(day)) return []
  const effective = orders
    .map((order) => dayNumber(order.effectiveDay))
    .sort((left, right) => left - right)
    .find((by) => by > day && reaches(by))
  if (effective === undefined) return []
  const inEffect = orders.filter((order) => dayNumber(order.effectiveDay) <= effective)
  const [order] = ordersThatTouch(card, inEffect)
    .filter((one) => dayNumber(one.effectiveDay) === effective)
    .sort(
      (left, right) => dayNumber(right.runsTo) - dayNumber(left.runsTo) || compareTexts(left.id, right.id),
    )
  if (order === undefined) return []
  const { effectiveDay } = order
  const runsTo = dayText(lastDayUnder(card, inEffect) ?? day)
  return [{ kind: 'valid-only-by-a-later-order', effectiveDay, runsTo, records: [card.id, order.id] }]
}

/** A card carried in whose own last day lies after the term its book proposes. */
function termNotes(records: Records, { card, own }: ReadCard): NoteOfDay[] {
  if (card.carriedIn === undefined || own === undefined) return []
  const edition =
    editionOn(records, card.book, dayNumber(card.effectiveDay)) ?? earliestOf(records, card.book)
  if (edition === undefined) return []
  const level = sameLevel(edition, card.level) ?? card.level
  const rule = rulesOf(edition, 'term').find((term) => term.levels.includes(level))
  if (rule === undefined) return []
  const last = lastDayOfTerm(card.effectiveDay, rule)
  if (own <= last) return []
  const figures = { kind: 'longer-than-term', lastDay: dayText(own), termLastDay: dayText(last) } as const
  const longer = { ...figures, rule: ruleRef(edition, rule), records: [card.id] }
  if (rule.disagrees === undefined) return [longer]
  return [
    longer,
    { kind: 'sources-disagree', other: rule.disagrees, rule: ruleRef(edition, rule), records: [] },
  ]
}

function lastDayOfTerm(effectiveDay: string, { term, end }: RuleOf<'term'>): number {
  const anniversary = monthsLater(effectiveDay, 'years' in term ? term.years * 12 : term.months)
  return end === 'on-anniversary' ? anniversary : anniversary - 1
}

function earliestOf(records: Records, book: string): Edition | undefined {
  return records.editions
    .filter((edition) => edition.book === book)
    .sort((left, right) => dayNumber(left.firstDay) - dayNumber(right.firstDay))[0]
}
