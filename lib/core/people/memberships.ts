import { toEpochDay, type CalendarDate, type EpochDay } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { Capacity } from '../rulebooks/words.ts'
import type { Membership, Permission } from './people.schema.ts'

/** A membership with its days at hand. */
export type IndexedMembership = {
  membership: Membership
  first: EpochDay | undefined
  last: EpochDay | undefined
}

/** How a membership stands to a day. `open` has begun and states no last day; `undated` states none at all. */
export type Coverage = 'covers' | 'open' | 'undated' | 'ended' | 'not-begun'

/** A membership made ready to be asked about days. */
export function indexMembership(membership: Membership): IndexedMembership {
  return {
    membership,
    first: membership.firstDay === undefined ? undefined : toEpochDay(membership.firstDay),
    last: membership.lastDay === undefined ? undefined : toEpochDay(membership.lastDay),
  }
}

/** How a membership stands to a day by the days it states. */
export function coverageOn({ first, last }: IndexedMembership, day: EpochDay): Coverage {
  if (last !== undefined && day > last) return 'ended'
  if (first !== undefined && day < first) return 'not-begun'
  if (last !== undefined) return 'covers'
  return first === undefined ? 'undated' : 'open'
}

/**
 * The memberships of a day: those whose agreement covers it or that state no days; those that have ended or not begun
 * only where no other covers the day, and of one organisation, unit and capacity only the nearest. Where no agreement
 * is wanted, a membership covers from its first day on, and every day where it states none.
 */
export function membershipsOn(
  memberships: readonly IndexedMembership[],
  day: EpochDay,
  wantAgreement: readonly Capacity[],
): readonly IndexedMembership[] {
  if (memberships.length < 2) return memberships
  const current = memberships.filter((indexed) => {
    const coverage = coverageOn(indexed, day)
    return coverage !== 'ended' && coverage !== 'not-begun'
  })
  const isCovered = current.some((indexed) => {
    const { capacity } = indexed.membership
    return coverageOn(indexed, day) === 'covers' || !wantAgreement.includes(capacity)
  })
  return isCovered
    ? current
    : memberships.filter((one) => !memberships.some((other) => isNearer(other, one, day)))
}

/**
 * Whether of two memberships of one kind that do not cover a day the other lies nearer: of seasons that have ended the
 * last speaks, and of those to come the next.
 */
function isNearer(other: IndexedMembership, one: IndexedMembership, day: EpochDay): boolean {
  const coverage = coverageOn(one, day)
  if (coverageOn(other, day) !== coverage || !isSameKind(other.membership, one.membership)) return false
  if (coverage === 'ended') return (other.last ?? day) > (one.last ?? day)
  return coverage === 'not-begun' && (other.first ?? day) < (one.first ?? day)
}

function isSameKind(left: Membership, right: Membership): boolean {
  return (
    left.organisation === right.organisation && left.unit === right.unit && left.capacity === right.capacity
  )
}

/** What a guardian said of a day: in the statement that speaks, or never. */
export type GuardianSaid =
  | { says: Permission['says']; permission: Permission }
  | { says: 'ended'; lastDay: CalendarDate; permission: Permission }
  | { says: 'not-on-record' }

/**
 * What a guardian's statements say on a day. The latest begun speaks. One that has run out lets an earlier refusal stand
 * again, and never an earlier permission.
 */
export function guardianSays(permissions: readonly Permission[], day: EpochDay): GuardianSaid {
  let latest: Permission | undefined
  let latestInForce: Permission | undefined
  for (const permission of permissions) {
    if (toEpochDay(permission.firstDay) > day) continue
    if (latest === undefined || speaksBefore(permission, latest)) latest = permission
    if (permission.lastDay !== undefined && toEpochDay(permission.lastDay) < day) continue
    if (latestInForce === undefined || speaksBefore(permission, latestInForce)) latestInForce = permission
  }
  if (latest === undefined) return { says: 'not-on-record' }
  const { lastDay } = latest
  if (lastDay === undefined || toEpochDay(lastDay) >= day) return { says: latest.says, permission: latest }
  return latestInForce === undefined || latestInForce.says === 'given'
    ? { says: 'ended', lastDay, permission: latest }
    : { says: latestInForce.says, permission: latestInForce }
}

function speaksBefore(left: Permission, right: Permission): boolean {
  if (left.firstDay !== right.firstDay) return left.firstDay > right.firstDay
  const bySaying = UNFAVOURABLE.indexOf(right.says) - UNFAVOURABLE.indexOf(left.says)
  return (
    (bySaying || byText(left.lastDay ?? FOR_EVER, right.lastDay ?? FOR_EVER) || byText(left.id, right.id)) < 0
  )
}

/** Sorts after every day. */
const FOR_EVER = '9999-12-31'

const UNFAVOURABLE: readonly Permission['says'][] = ['given', 'withdrawn', 'refused']
