import type { Sections } from '../../lib/core/authority/records.ts'
import { plusDays, type CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Capacity, Delivery } from '../../lib/core/rulebooks/words.ts'
import type { Draw } from '../properties/draw.ts'
import { AGENCY, PARTNER, SEASON_FIRST, UNITS, dayAfter, dayBefore, seasonDay, yearsFrom } from './season.ts'

type PersonSections = 'people' | 'memberships' | 'permissions' | 'certificates' | 'designations'

/** What a program knows of its people, their cards apart. */
export type BigPeople = { [Name in PersonSections]: Sections[Name][] }

/** How many in a hundred renewed on time, renewed late or let it lapse, of those whose certificate ends in the season. */
const RENEWALS = [[55, 'on-time'], [20, 'late'], [25, 'lapsed']] as const // prettier-ignore

/** Adds the facts of one person; people of the staff are adult employees with everything in order. */
export function addPerson(draw: Draw, into: BigPeople, id: string, isStaff: boolean): void {
  const capacity: Capacity = isStaff
    ? 'employee'
    : draw.weighted<Capacity>([
        [28, 'employee'],
        [52, 'volunteer'],
        [11, 'paid-corps-member'],
        [5, 'student'],
        [2, 'contractor'],
        [2, 'not-stated'],
      ])
  const isMinor = !isStaff && (capacity === 'volunteer' || capacity === 'student') && draw.chance(6)
  into.people.push({ id, recordedIn: 1, name: `Invented ${id}`, ...ageOf(draw, isStaff, isMinor) })
  addMemberships(draw, into, id, capacity)
  if (isMinor && draw.chance(75))
    into.permissions.push({
      id: `permission-${id}`,
      recordedIn: 1,
      person: id,
      says: draw.chance(90) ? 'given' : 'refused',
      firstDay: dayBefore(draw, 90),
    })
  for (const subject of ['first-aid', 'cpr']) addCertificates(draw, into, id, subject, isStaff)
  if (isStaff)
    into.designations.push({
      id: `designation-${id}`,
      recordedIn: 1,
      person: id,
      role: 'instructor',
      book: 'federal-crosscut',
      level: 'C',
      workKinds: ['bucking', 'felling'],
      sawKind: 'crosscut',
      firstDay: dayBefore(draw, 400),
      by: 'Invented Manager',
    })
}

function ageOf(
  draw: Draw,
  isStaff: boolean,
  isMinor: boolean,
): { birthDate?: CalendarDate; ofAgeFrom?: CalendarDate; attestedBy?: string } {
  // Born so that some become 16 and 18 within the season.
  if (isMinor) return { birthDate: plusDays(yearsFrom(SEASON_FIRST, -18), draw.below(900)) }
  if (!isStaff && draw.chance(6))
    return draw.chance(90) ? { ofAgeFrom: dayBefore(draw, 4000), attestedBy: 'Invented Reader' } : {}
  return { birthDate: plusDays(yearsFrom(SEASON_FIRST, -19), -draw.below(15_000)) }
}

function addMemberships(draw: Draw, into: BigPeople, id: string, capacity: Capacity): void {
  const unit = draw.pick(UNITS)
  const membership = (index: number, days: { firstDay?: CalendarDate; lastDay?: CalendarDate }) =>
    into.memberships.push({
      id: `membership-${id}-${index}`,
      recordedIn: 1,
      person: id,
      organisation: capacity === 'employee' ? AGENCY : PARTNER,
      unit,
      capacity,
      ...days,
    })
  if (capacity === 'employee') {
    membership(1, {})
    return
  }
  const began = dayBefore(draw, 300)
  const change = seasonDay(draw)
  switch (
    draw.weighted([[74, 'covers'], [14, 'renewed'], [5, 'ends'], [3, 'late'], [4, 'undated']] as const) /* prettier-ignore */
  ) {
    case 'covers':
      return void membership(1, { firstDay: began, lastDay: dayAfter(draw, 200) })
    case 'renewed':
      membership(1, { firstDay: began, lastDay: change })
      return void membership(2, { firstDay: plusDays(change, 1), lastDay: dayAfter(draw, 400) })
    case 'ends':
      return void membership(1, { firstDay: began, lastDay: change })
    case 'late':
      return void membership(1, { firstDay: change, lastDay: dayAfter(draw, 200) })
    case 'undated':
      return void membership(1, {})
  }
}

function addCertificates(draw: Draw, into: BigPeople, id: string, subject: string, isStaff: boolean): void {
  let count = 0
  const add = (firstDay: CalendarDate, lastDay: CalendarDate) => {
    count += 1
    const delivery = isStaff ? 'in-person' : drawDelivery(draw)
    into.certificates.push({
      id: `${subject}-${id}-${count}`,
      recordedIn: 1,
      person: id,
      subject,
      issuedBy: 'Invented Rescue School',
      delivery,
      firstDay,
      lastDay,
      seen: isStaff || draw.chance(94),
      by: 'Invented Reader',
    })
  }
  const through = (last: CalendarDate) => add(plusDays(yearsFrom(last, -2), 1), last)
  if (isStaff) {
    through(dayBefore(draw, 200))
    through(dayAfter(draw, 400))
    return
  }
  if (draw.chance(5)) return
  if (!draw.chance(24)) {
    const last = dayAfter(draw, 560)
    if (draw.chance(40)) through(plusDays(yearsFrom(last, -2), draw.below(60)))
    through(last)
    return
  }
  const ends = seasonDay(draw)
  through(ends)
  const renewal = draw.weighted(RENEWALS)
  if (renewal === 'lapsed') return
  const begins = plusDays(ends, renewal === 'on-time' ? 1 - draw.below(30) : 2 + draw.below(40))
  add(begins, plusDays(yearsFrom(begins, 2), -1))
}

function drawDelivery(draw: Draw): Delivery {
  return draw.weighted<Delivery>([
    [70, 'in-person'],
    [15, 'blended'],
    [8, 'online'],
    [7, 'not-stated'],
  ])
}
