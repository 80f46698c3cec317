import { toEpochDay, type EpochDay } from '../calendar/dates.ts'
import { dateIn } from '../calendar/instants.ts'
import { AFTER_ALL, hasDay, type DaySpan } from '../calendar/spans.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { Sink } from '../rulebooks/sink.ts'
import type { SawKind, WorkKind } from '../rulebooks/words.ts'
import type { Lift, Suspension } from './cards.schema.ts'
import type { CardFinding, CardMet } from './findings.ts'

/** A suspension with the days it covers, lifts taken off, and the days its notice reached whom. */
export type IndexedSuspension = {
  suspension: Suspension
  /** Covers nothing where its last lies before its first. */
  days: DaySpan
  noticeDays: ReadonlyMap<string, EpochDay>
  lifts: readonly string[]
}

/** Puts a suspension together with its lifts: the day before the earliest lifting day is its last. */
export function indexSuspension(
  suspension: Suspension,
  lifts: readonly Lift[],
  timeZone: string,
): IndexedSuspension {
  let last: number = suspension.lastDay === undefined ? AFTER_ALL : toEpochDay(suspension.lastDay)
  const lifted: string[] = []
  for (const lift of lifts) {
    if (lift.suspension !== suspension.id) continue
    lifted.push(lift.id)
    last = Math.min(last, toEpochDay(lift.day) - 1)
  }
  const noticeDays = new Map<string, EpochDay>()
  for (const notice of suspension.notices ?? []) {
    const day = toEpochDay(dateIn(notice.at, timeZone))
    const known = noticeDays.get(notice.person)
    if (known === undefined || day < known) noticeDays.set(notice.person, day)
  }
  return {
    suspension,
    days: { first: toEpochDay(suspension.firstDay), last: last as EpochDay },
    noticeDays,
    lifts: lifted,
  }
}

/**
 * Whether a suspension stops a work kind with a saw kind on a day. Training under an assignment passes no work kind:
 * a suspension of any work kind stops it.
 */
export function stopsOn(
  { suspension, days }: IndexedSuspension,
  day: EpochDay,
  workKind: WorkKind | undefined,
  sawKind: SawKind,
): boolean {
  if (!hasDay(days, day)) return false
  const { subject, workKinds, sawKinds } = suspension
  if (sawKinds?.includes(sawKind) === false) return false
  if (subject.kind === 'saw-kind' && subject.sawKind !== sawKind) return false
  if (workKind === undefined) return true
  if (workKinds?.includes(workKind) === false) return false
  return subject.kind !== 'work-kind' || subject.workKind === workKind
}

/** Tells a suspension as a finding about a person on a day. */
export function tellSuspended(
  edition: EditionIndex,
  indexed: IndexedSuspension,
  person: string,
  day: EpochDay,
  sink: Sink<CardFinding, CardMet>,
): void {
  const noticeDay = indexed.noticeDays.get(person)
  sink.unmet({
    kind: 'suspended',
    form: indexed.suspension.form,
    because: indexed.suspension.kind,
    notice: noticeDay === undefined ? 'not-recorded' : day < noticeDay ? 'before' : 'after',
    rule: edition.ref(edition.one('suspension')),
    records: [indexed.suspension.id],
    allows: 'none',
  })
}
