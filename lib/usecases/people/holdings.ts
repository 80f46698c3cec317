import type { PersonIndex } from '../../core/authority/person-index.ts'
import { fromEpochDay, plusDays, type CalendarDate, type EpochDay } from '../../core/calendar/dates.ts'
import { AFTER_ALL } from '../../core/calendar/spans.ts'
import { lastCountingDay, type IndexedCard } from '../../core/cards/card-index.ts'
import type { IndexedSuspension } from '../../core/cards/suspensions.ts'
import type { Designation } from '../../core/people/people.schema.ts'
import type { LapseRun } from '../../drawings/lapse-line.ts'
import type { Held } from '../../wording/held.ts'

/** Something a person holds or that stops them, with its runs of days; `independent` where it counts as it stands. */
export type Holding = {
  what: Held
  runs: readonly LapseRun[]
  /** The last day of the run that covers today; absent where none does or it has no end. */
  last?: CalendarDate
}

/**
 * What holds a person up, and what stops them: cards, certificates by subject, agreements, designations, a guardian's
 * permission, suspensions. Records of one thing stand on one line.
 */
export function holdingsOf(person: PersonIndex, today: CalendarDate): Holding[] {
  const { records } = person
  const certificates = grouped(person.certificates, ({ certificate }) => certificate.subject).map(
    ([subject, own]): Holding =>
      held(
        { kind: 'certificate', subject },
        own.map(({ certificate, skillsShown }) => ({
          ...daysOf(certificate),
          kind: certificate.seen && skillsShown && isDated(certificate) ? 'independent' : 'unknown',
        })),
        today,
      ),
  )
  const agreements = grouped(records.memberships, ({ organisation }) => organisation)
    .filter(([, own]) => own.some(({ lastDay }) => lastDay !== undefined))
    .map(([organisation, own]) => held({ kind: 'agreement', organisation }, wholeRuns(own), today))
  const designations = grouped(records.designations, sameAppointment).map(([, own]) =>
    held({ kind: 'designation', role: own[0]?.role ?? 'instructor' }, wholeRuns(own), today),
  )
  const permissions = wholeRuns(records.permissions.filter(({ says }) => says === 'given'))
  return [
    ...certificates,
    ...person.cards.map((card) => held({ kind: 'card', card: card.card.id }, cardRuns(card), today)),
    ...agreements,
    ...(permissions.length === 0 ? [] : [held({ kind: 'permission' }, permissions, today)]),
    ...designations,
    ...suspensionsOf(person).map((one) =>
      held({ kind: 'suspension', suspension: one.suspension.id }, [suspendedRun(one)], today),
    ),
  ]
}

/** Every suspension that may be about a person, those that name a number of theirs among them. */
export function suspensionsOf(person: PersonIndex): IndexedSuspension[] {
  const all = [...person.suspensions, ...person.cards.flatMap(({ suspensions }) => suspensions)]
  return [...new Map(all.map((one) => [one.suspension.id, one])).values()]
}

/** Something that lapses: its last day, past which nothing of its kind carries on. */
export type Lapse = { what: Held; last: CalendarDate }

/** Everything that a person holds today and that lapses, cards first. */
export function lapsesOf(person: PersonIndex, today: CalendarDate): Lapse[] {
  const others = holdingsOf(person, today).filter(
    ({ what }) => what.kind !== 'suspension' && what.kind !== 'card',
  )
  return [...cardsAlike(person, today), ...others].flatMap(({ what, last }) =>
    last === undefined ? [] : [{ what, last }],
  )
}

/** What lapses next of what a person holds today; of several on one day a card, then a certificate. */
export function nextToLapse(person: PersonIndex, today: CalendarDate): Lapse | undefined {
  let next: Lapse | undefined
  for (const lapse of lapsesOf(person, today)) if (next === undefined || lapse.last < next.last) next = lapse
  return next
}

/** Cards for the same work as one thing: a renewal in time carries it on. */
function cardsAlike(person: PersonIndex, today: CalendarDate): Holding[] {
  return grouped(person.cards, ({ card }) => JSON.stringify([card.workKinds, card.sawKinds])).flatMap(
    ([, cards]) => {
      const runs = cards.flatMap(cardRuns)
      const last = coveredThrough(runs, today)
      const ending = cards.find((card) => cardRuns(card)[0]?.last === last)
      return ending === undefined || last === undefined
        ? []
        : [{ what: { kind: 'card' as const, card: ending.card.id }, runs, last }]
    },
  )
}

function held(what: Held, runs: readonly LapseRun[], today: CalendarDate): Holding {
  const last = coveredThrough(runs, today)
  return { what, runs, ...(last === undefined ? {} : { last }) }
}

/** The last day through which runs that touch or overlap cover every day from today on. */
function coveredThrough(runs: readonly LapseRun[], today: CalendarDate): CalendarDate | undefined {
  let through: CalendarDate | undefined
  for (const { first, last } of [...runs].sort((left, right) =>
    (left.first ?? '') < (right.first ?? '') ? -1 : 1,
  )) {
    if (last !== undefined && last < today) continue
    const isNext = (first ?? today) <= (through === undefined ? today : plusDays(through, 1))
    if (!isNext) break
    if (last === undefined) return undefined
    if (through === undefined || last > through) through = last
  }
  return through
}

function cardRuns(indexed: IndexedCard): LapseRun[] {
  const last = lastCountingDay(indexed)
  const first = indexed.card.effectiveDay
  if (last < indexed.effective) return []
  return [
    {
      first,
      ...(last >= AFTER_ALL - 1 ? {} : { last: fromEpochDay(last) }),
      kind: indexed.last === undefined ? 'unknown' : 'independent',
    },
  ]
}

function suspendedRun({ suspension, days }: IndexedSuspension): LapseRun {
  return {
    first: suspension.firstDay,
    ...(isOpen(days.last) ? {} : { last: fromEpochDay(days.last) }),
    kind: days.last < days.first ? 'none' : 'suspended',
  }
}

function isOpen(day: EpochDay): boolean {
  return day >= AFTER_ALL
}

/** What a designation is for, as a key: those for the same stand on one line. */
function sameAppointment({ role, book, level, workKinds, sawKind }: Designation): string {
  return JSON.stringify([role, book, level, workKinds, sawKind])
}

/** Records that count on all of their days. */
function wholeRuns(records: readonly { firstDay?: CalendarDate; lastDay?: CalendarDate }[]): LapseRun[] {
  return records.map((one) => ({ ...daysOf(one), kind: 'independent' }))
}

function daysOf({ firstDay, lastDay }: { firstDay?: CalendarDate; lastDay?: CalendarDate }) {
  return {
    ...(firstDay === undefined ? {} : { first: firstDay }),
    ...(lastDay === undefined ? {} : { last: lastDay }),
  }
}

function isDated({ firstDay, lastDay }: { firstDay?: CalendarDate; lastDay?: CalendarDate }): boolean {
  return firstDay !== undefined && lastDay !== undefined
}

function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): [string, Item[]][] {
  const groups = new Map<string, Item[]>()
  for (const item of items) {
    const group = groups.get(keyOf(item))
    if (group === undefined) groups.set(keyOf(item), [item])
    else group.push(item)
  }
  return [...groups]
}
