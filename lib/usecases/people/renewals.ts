import type { HoldsThrough } from '../../core/authority/answer.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import type { PersonIndex } from '../../core/authority/person-index.ts'
import type { Records } from '../../core/authority/records.ts'
import { plusDays, type CalendarDate } from '../../core/calendar/dates.ts'
import type { WorkKind } from '../../core/rulebooks/words.ts'
import type { Held } from '../../wording/held.ts'
import { lapsesOf, type Lapse } from './holdings.ts'
import { LISTED_SAW } from './people-rows.ts'
import { isYes, strongestLines } from './standing-line.ts'
import { asIfRenewed, differences, type TakenAway } from './taken-away.ts'

/**
 * What must be renewed by a day: everything that ends on it and without which standings would be lost then, what had to
 * be renewed before taken as renewed; and how far the kinds of work would hold with all of it renewed.
 */
export type Renewal = {
  what: readonly Held[]
  last: CalendarDate
  lost: readonly TakenAway[]
  /** Of each kind of work that would be lost; nothing where it holds as long as these are kept renewed. */
  then: readonly { workKind: WorkKind; through?: HoldsThrough }[]
}

/** How long something renewed is taken to go on, in days: longer than anything that is listed here. */
const GOES_ON = 7300

/** What somebody must renew to go on as today, the nearest day first. */
export function renewalsOf(
  records: Records,
  authority: Authority,
  person: PersonIndex,
  today: CalendarDate,
): readonly Renewal[] {
  const { id } = person
  const renewed: Lapse[] = []
  const renewals: Renewal[] = []
  let before = authority
  for (const { last, lapses } of byLastDay(lapsesOf(person, today))) {
    // Two that end on one day are lost together: neither takes anything away by itself.
    renewed.push(...lapses)
    const after = asIfRenewed(records, id, renewed, GOES_ON)
    const lost = differences(before, after, { person: id, last }, today)
    before = after
    if (lost.length === 0) continue
    const kinds = [...new Set(lost.map(({ workKind }) => workKind))]
    const then = kinds.map((workKind) => ({ workKind, ...throughOf(after, id, workKind, today) }))
    renewals.push({ what: lapses.map(({ what }) => what), last, lost, then })
  }
  return renewals
}

function byLastDay(lapses: readonly Lapse[]): readonly { last: CalendarDate; lapses: readonly Lapse[] }[] {
  const days = [...new Set(lapses.map(({ last }) => last))].sort()
  return days.map((last) => ({ last, lapses: lapses.filter((lapse) => lapse.last === last) }))
}

/** Far ends are those of what was taken as renewed, and say nothing. */
const TOLD_WITHIN = 3650

function throughOf(
  authority: Authority,
  id: string,
  workKind: WorkKind,
  today: CalendarDate,
): { through?: HoldsThrough } {
  const index = authority.person(id)
  if (index === undefined) return {}
  const line = strongestLines(authority, [index], { workKind, sawKind: LISTED_SAW }, today).get(id)
  if (line === undefined || !isYes(line.standing) || line.through === 'open') return {}
  return line.through > plusDays(today, TOLD_WITHIN) ? {} : { through: line.through }
}
