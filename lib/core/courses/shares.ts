import type { Finding } from '../authority/answer.ts'
import type { Authority } from '../authority/authority-index.ts'
import type { CalendarDate } from '../calendar/dates.ts'
import { refusal, success, type Result } from '../kernel/result.ts'
import { COMPLEXITIES, type Complexity } from '../rulebooks/words.ts'
import { isSupervised, rankOf, INDEPENDENT, type Standing } from '../rulebooks/standing.ts'
import {
  editionAt,
  isOfDay,
  itemsOf,
  plannedThatDay,
  standingThatDay,
  type CourseItem,
} from './course-work.ts'
import type { Seat, Session, Share } from './courses.schema.ts'
import { fieldSittings, kindsAsked, sittingsOf } from './field-sittings.ts'
import { sizeFor } from './roster-limit.ts'
import { shareOut, type CandidateWants, type Given, type Missing, type Piece } from './share-out.ts'

/** Somebody for whose level no rule says what they should get. */
export type NoShareRule = { person: string; level: string; workKind: Piece['workKind'] }

/** The logs and trees of a session shared out among those on its roster, and what could not be. */
export type SharedOut = {
  given: readonly Given[]
  missing: readonly Missing[]
  /** Items that nobody has rated: how hard they are is not known, so they are given to nobody. */
  unrated: readonly string[]
  withoutRule: readonly NoShareRule[]
}

/**
 * Shares the logs and trees of a session out by what the book wants for the level each asks for. An item counts as the
 * most complex it is planned at on any field day of its kind. `authority` holds the assignments of the roster as made
 * (`asIfSeated`); what is on record as shared stays.
 */
export function shareOutSession(
  authority: Authority,
  session: Session,
  onRoster: readonly Seat[],
  shares: readonly Share[],
): SharedOut {
  const pieces: Piece[] = []
  const unrated: string[] = []
  const items = itemsOf(authority, session)
  for (const item of items) {
    const piece = pieceOf(authority, session, item)
    if (piece === 'unrated') unrated.push(item.item)
    else if (piece !== undefined) pieces.push(piece)
  }
  const withoutRule: NoShareRule[] = []
  const candidates = onRoster.map((seat) => wantsOf(authority, session, seat, withoutRule))
  const days = daysByCandidate(authority, session, onRoster, items)
  const { given, missing } = shareOut({
    candidates,
    pieces,
    daysFor: (person, item) => days.get(`${person} ${item}`) ?? [],
    held: shares.filter((share) => share.session === session.id),
  })
  return { given, missing, unrated, withoutRule }
}

/** Why a share may not be carried over to another day. */
export type CarryProblem =
  | { kind: 'not-later'; day: CalendarDate }
  | { kind: 'no-field-day'; to: CalendarDate }
  | { kind: 'not-a-day-of-the-item'; to: CalendarDate }
  | { kind: 'may-not-that-day'; to: CalendarDate; standing: Standing; findings: readonly Finding[] }
  | { kind: 'not-on-roster'; person: string }
  | { kind: 'not-an-item-of-the-session'; item: string }

/** A share moved to a later field day of the session, with the day it was carried over from and why. */
export function carryOver(
  authority: Authority,
  session: Session,
  onRoster: readonly Seat[],
  share: Pick<Share, 'person' | 'item' | 'day'>,
  to: CalendarDate,
  because: string,
): Result<Pick<Share, 'person' | 'item' | 'day'> & Required<Pick<Share, 'carriedOver'>>, CarryProblem> {
  const { person, item: id, day } = share
  if (to <= day) return refusal({ kind: 'not-later', day })
  const seat = onRoster.find((known) => known.person === person)
  if (seat === undefined) return refusal({ kind: 'not-on-roster', person })
  const item = itemsOf(authority, session).find((known) => known.item === id)
  if (item === undefined) return refusal({ kind: 'not-an-item-of-the-session', item: id })
  if (!fieldDaysFor(session, seat, item).includes(to)) return refusal({ kind: 'no-field-day', to })
  const said = isOfDay(item, to) ? standingThatDay(authority, person, item.work, to) : undefined
  if (said === undefined) return refusal({ kind: 'not-a-day-of-the-item', to })
  if (!mayBeOn(said.standing)) return refusal({ kind: 'may-not-that-day', to, ...said })
  return success({ person, item: id, day: to, carriedOver: { from: day, because } })
}

/** In training, under somebody at their own level, or on their own. */
function mayBeOn(standing: Standing): boolean {
  const rank = rankOf(standing)
  return rank === INDEPENDENT || isSupervised(rank)
}

function fieldDaysFor(session: Session, seat: Seat, { work }: CourseItem): CalendarDate[] {
  return sittingsOf(seat, session)
    .filter((sitting) => kindsAsked(seat, sitting).includes(work.workKind))
    .map(({ day }) => day)
}

function pieceOf(authority: Authority, session: Session, item: CourseItem): Piece | 'unrated' | undefined {
  const { workKind } = item.work
  const days = fieldSittings(session)
    .filter((sitting) => sitting.workKinds.includes(workKind) && isOfDay(item, sitting.day))
    .map(({ day }) => day)
  const [first] = days
  if (first === undefined) return undefined
  let complexity: Complexity = 'least'
  for (const day of days) {
    const planned = plannedThatDay(authority, item, day)
    if (planned === 'not-rated') return 'unrated'
    if (COMPLEXITIES.indexOf(planned) > COMPLEXITIES.indexOf(complexity)) complexity = planned
  }
  const edition = editionAt(authority, session, first)
  const places = edition === undefined ? undefined : sizeFor(edition, 'per-item', { workKinds: [workKind] })
  return { item: item.item, workKind, complexity, places: places?.count ?? 1 }
}

function wantsOf(
  authority: Authority,
  session: Session,
  seat: Seat,
  withoutRule: NoShareRule[],
): CandidateWants {
  const wants = seat.workKinds.flatMap((workKind) => {
    const first = sittingsOf(seat, session).find((sitting) => sitting.workKinds.includes(workKind))
    if (first === undefined) return []
    const edition = editionAt(authority, session, first.day)
    const level = edition?.level(seat.level)?.level
    const rule = edition
      ?.all('course.share')
      .find((known) => known.level === level && known.workKinds.includes(workKind))
    if (rule === undefined) {
      withoutRule.push({ person: seat.person, level: seat.level, workKind })
      return []
    }
    return COMPLEXITIES.map((complexity) => ({ workKind, complexity, count: rule.mix[complexity] }))
  })
  return { person: seat.person, wants }
}

/** For each candidate and item the field days on which the engine lets them be on it. */
function daysByCandidate(
  authority: Authority,
  session: Session,
  onRoster: readonly Seat[],
  items: readonly CourseItem[],
): ReadonlyMap<string, readonly CalendarDate[]> {
  const days = new Map<string, readonly CalendarDate[]>()
  for (const seat of onRoster)
    for (const item of items) {
      const may = fieldDaysFor(session, seat, item).filter((day) => {
        const said = standingThatDay(authority, seat.person, item.work, day)
        return said !== undefined && mayBeOn(said.standing)
      })
      days.set(`${seat.person} ${item.item}`, [...new Set(may)])
    }
  return days
}
