import type { MatrixItem } from '../../lib/core/authority/matrix.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { plusDays, type CalendarDate } from '../../lib/core/calendar/dates.ts'
import { Draw } from '../properties/draw.ts'

/** A person and an item, by their numbers. */
export type Pair = { person: number; item: number }

/** Pairs in which something is renewed on time, without a gap, within the days of the item: at most so many. */
export function renewedPairs(records: Records, items: readonly MatrixItem[], most: number): Pair[] {
  const renewals = records.people.map(({ id }) => renewalDays(records, id))
  const pairs = renewals.flatMap((days, person) =>
    items.flatMap(({ first, last }, item) =>
      days.some((day) => first < day && day <= last) ? [{ person, item }] : [],
    ),
  )
  const step = Math.max(1, Math.ceil(pairs.length / most))
  return pairs.filter((_, index) => index % step === 0)
}

/** So many pairs, each as likely as any other. */
export function drawnPairs(people: number, items: number, count: number, seed: number): Pair[] {
  const draw = new Draw(seed)
  return Array.from({ length: count }, () => ({ person: draw.below(people), item: draw.below(items) }))
}

/** So many people, or everybody where there are no more; each as likely as any other. */
export function drawnPeople(people: number, count: number, seed: number): number[] {
  const draw = new Draw(seed)
  const left = Array.from({ length: people }, (_, person) => person)
  const drawn: number[] = []
  while (drawn.length < count && left.length > 0) drawn.push(...left.splice(draw.below(left.length), 1))
  return drawn.sort((one, other) => one - other)
}

let byPerson: { of: Records; spans: Map<string, Map<string, Span[]>> } | undefined

type Span = { first: CalendarDate; last: CalendarDate }

/** The first days of cards, certificates and agreements that follow another without a gap. */
function renewalDays(records: Records, person: string): CalendarDate[] {
  if (byPerson?.of !== records) byPerson = { of: records, spans: spansOf(records) }
  return [...(byPerson.spans.get(person)?.values() ?? [])].flatMap((spans) =>
    spans
      .filter(({ first }) => spans.some((other) => other.first < first && first <= plusDays(other.last, 1)))
      .map(({ first }) => first),
  )
}

function spansOf(records: Records): Map<string, Map<string, Span[]>> {
  const found = new Map<string, Map<string, Span[]>>()
  const add = (
    person: string,
    what: string,
    first: CalendarDate | undefined,
    last: CalendarDate | undefined,
  ) => {
    if (first === undefined || last === undefined) return
    const own = found.get(person) ?? new Map<string, Span[]>()
    own.set(what, [...(own.get(what) ?? []), { first, last }])
    found.set(person, own)
  }
  for (const card of records.cards)
    add(card.person, `card ${card.level} ${card.line}`, card.effectiveDay, card.lastDay)
  for (const one of records.certificates) add(one.person, one.subject, one.firstDay, one.lastDay)
  for (const one of records.memberships) add(one.person, one.capacity, one.firstDay, one.lastDay)
  return found
}
