import type { CalendarDate } from '../core/calendar/dates.ts'
import { toEpochDay } from '../core/calendar/dates.ts'
import { coverageOn, indexMembership } from '../core/people/memberships.ts'
import type { Hitch, Placement } from '../core/work/hitches.schema.ts'
import type { JoinedPeople } from '../core/people/joined-people.ts'
import type { Membership } from '../core/people/people.schema.ts'
import type { Place } from '../core/work/work.schema.ts'
import { PlaceIndex } from '../core/work/place-index.ts'
import type { Actor, GrantedRole } from './roles.ts'
import { ACCESS_TABLE, type Permission, type Reach } from './table.ts'

/** The records that say who belongs where, as now known. */
export type Belonging = {
  memberships: readonly Membership[]
  places: readonly Place[]
  hitches: readonly Hitch[]
  placements: readonly Placement[]
  /** Whose record counts for whom: who is reached is reached by every record of theirs. */
  joined: JoinedPeople
}

/** Where somebody belongs: an organisation, and within it a unit where one is named. */
export type Belongs = Pick<Membership, 'organisation' | 'unit'>

/** The people whom a permission reaches: everybody, or those named. */
export type PeopleInReach = 'everybody' | ReadonlySet<string>

/** Whether any role of the actor has the permission at all. */
export function hasPermission(actor: Actor, permission: Permission): boolean {
  return actor.roles.some(({ role }) => ACCESS_TABLE[permission][role] !== undefined)
}

/** Whether a permission reaches anybody's record but the actor's own. */
export function reachesOthers(actor: Actor, permission: Permission): boolean {
  return actor.roles.some(({ role }) => !['own', undefined].includes(ACCESS_TABLE[permission][role]))
}

/** Whether a permission reaches the whole program. */
export function reachesProgram(actor: Actor, permission: Permission): boolean {
  return actor.roles.some((granted) => {
    const reach = ACCESS_TABLE[permission][granted.role]
    return reach === 'program' && isUnscoped(granted)
  })
}

/** On whose record an actor may use a permission today. */
export function peopleInReach(
  actor: Actor,
  permission: Permission,
  belonging: Belonging,
  today: CalendarDate,
): PeopleInReach {
  const { memberships, places, joined } = belonging
  const reached = new Set<string>()
  const tree = new PlaceIndex(places)
  const day = toEpochDay(today)
  for (const granted of actor.roles) {
    const reach = ACCESS_TABLE[permission][granted.role]
    if (reach === undefined) continue
    if (reach === 'own') {
      if (actor.person !== undefined) reached.add(actor.person)
      continue
    }
    if (reach === 'crew') {
      for (const person of crewsLedBy(actor.person, belonging, today)) reached.add(person)
      continue
    }
    const wanted = scopeOf(granted, reach)
    if (wanted.unit === undefined && wanted.organisation === undefined) return 'everybody'
    for (const membership of memberships) {
      if (!isMemberOn(membership, day) || !isWithin(membership, wanted, tree)) continue
      reached.add(membership.person)
    }
    // Whoever works here reads their own record, whatever else their role reaches.
    if (actor.person !== undefined) reached.add(actor.person)
  }
  return joined.withAll(new Set([...reached].map((person) => joined.of(person))))
}

/** Whether a permission reaches those who belong so, whoever they are. */
export function reachesBelonging(
  actor: Actor,
  permission: Permission,
  belongs: Belongs,
  places: readonly Place[],
): boolean {
  const tree = new PlaceIndex(places)
  return actor.roles.some((granted) => {
    const reach = ACCESS_TABLE[permission][granted.role]
    if (reach === undefined || reach === 'own' || reach === 'crew') return false
    return isWithin(belongs, scopeOf(granted, reach), tree)
  })
}

/** Whether a permission reaches the work in a place: a role for one organisation alone reaches no place. */
export function reachesPlace(
  actor: Actor,
  permission: Permission,
  place: string,
  places: readonly Place[],
): boolean {
  const chain = new PlaceIndex(places).chain(place)
  return actor.roles.some((granted) => {
    const reach = ACCESS_TABLE[permission][granted.role]
    if (reach === undefined || reach === 'own' || reach === 'crew') return false
    return granted.unit === undefined ? granted.organisation === undefined : chain.includes(granted.unit)
  })
}

/** Whether one person's record is within reach. */
export function isInReach(people: PeopleInReach, person: string): boolean {
  return people === 'everybody' || people.has(person)
}

/** Who is in the crews that somebody leads, themselves too: of hitches that have not ended before today. */
function crewsLedBy(
  person: string | undefined,
  { hitches, placements }: Belonging,
  today: CalendarDate,
): readonly string[] {
  if (person === undefined) return []
  const led = new Set(
    hitches.filter(({ lead, lastDay }) => lead === person && today <= lastDay).map(({ id }) => id),
  )
  return [person, ...placements.filter(({ hitch }) => led.has(hitch)).map((one) => one.person)]
}

function isUnscoped({ unit, organisation }: GrantedRole): boolean {
  return unit === undefined && organisation === undefined
}

function scopeOf(granted: GrantedRole, reach: Reach): Pick<GrantedRole, 'unit' | 'organisation'> {
  return reach === 'organisation'
    ? { ...(granted.organisation === undefined ? {} : { organisation: granted.organisation }) }
    : granted
}

function isMemberOn(membership: Membership, day: ReturnType<typeof toEpochDay>): boolean {
  const coverage = coverageOn(indexMembership(membership), day)
  return coverage !== 'ended' && coverage !== 'not-begun'
}

function isWithin(
  membership: Belongs,
  wanted: Pick<GrantedRole, 'unit' | 'organisation'>,
  tree: PlaceIndex,
): boolean {
  if (wanted.organisation !== undefined && membership.organisation !== wanted.organisation) return false
  if (wanted.unit === undefined) return true
  return membership.unit !== undefined && tree.chain(membership.unit).includes(wanted.unit)
}
