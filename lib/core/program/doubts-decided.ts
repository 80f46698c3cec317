import type { Records } from '../authority/records.ts'
import type { CalendarDate } from '../calendar/dates.ts'
import { foldedName } from '../kernel/folded.ts'
import { LastDays } from './last-days.ts'
import type { FactsBySection } from './sections.ts'
import type { TellDoubt } from './tell-doubt.ts'

/** What the times of knowing of one version are asked for. */
type Recorded = { id: string; recordedIn: number; supersedes?: number }

/**
 * Suspensions that were recorded again after the lift that ends them: nobody has decided to lift what is now on record.
 * A correction keeps the time of what it corrects.
 */
export function doubtOldLifts(facts: FactsBySection, records: Records, doubt: TellDoubt): void {
  const suspensionOrigin = originsOf(facts.suspensions)
  const liftOrigin = originsOf(facts.lifts)
  const recorded = new Map(records.suspensions.map((one) => [one.id, suspensionOrigin(one)]))
  const oldest = new Map<string, { lift: string; liftEntry: number }>()
  for (const lift of records.lifts) {
    const liftEntry = liftOrigin(lift)
    const before = oldest.get(lift.suspension)
    if (liftEntry >= (recorded.get(lift.suspension) ?? 0) || (before?.liftEntry ?? Infinity) <= liftEntry)
      continue
    oldest.set(lift.suspension, { lift: lift.id, liftEntry })
  }
  for (const suspension of records.suspensions) {
    const lift = oldest.get(suspension.id)
    if (lift === undefined) continue
    const { firstDay } = suspension
    const entry = suspensionOrigin(suspension)
    doubt(suspension, { kind: 'lifted-before-recorded', firstDay, entry, ...lift })
  }
}

/** The entry in which the first of a chain of corrections was recorded. */
function originsOf(versions: readonly Recorded[]): (version: Recorded) => number {
  const supersedes = new Map(versions.map((one) => [`${one.id} ${one.recordedIn}`, one.supersedes]))
  return ({ id, recordedIn }) => {
    let entry = recordedIn
    // INVARIANT: in a program that was read no corrections go in a circle.
    for (let earlier = supersedes.get(`${id} ${entry}`); earlier !== undefined;) {
      entry = earlier
      earlier = supersedes.get(`${id} ${entry}`)
    }
    return entry
  }
}

/** Words of a card still in force that its holder said the meaning of, or that were found to restrict nothing. */
export function doubtResolutions(records: Records, today: CalendarDate, doubt: TellDoubt): void {
  if (records.resolutions.length === 0) return
  const ended = new Set(records.endings.filter(({ firstDay }) => firstDay <= today).map(({ card }) => card))
  const cards = new Map(records.cards.map((card) => [card.id, card]))
  const lastDays = new LastDays(records)
  const holders = new Map(records.people.map(({ id, name }) => [id, foldedName(name)]))
  for (const resolution of records.resolutions) {
    const { card: id, restriction, by, into } = resolution
    const card = cards.get(id)
    if (card === undefined || ended.has(id)) continue
    const lastDay = lastDays.of(card)
    if (lastDay !== undefined && lastDay < today) continue
    if (foldedName(by) === holders.get(card.person))
      doubt(resolution, { kind: 'resolved-by-holder', card: id, restriction, by })
    if (into.length === 0) doubt(resolution, { kind: 'resolved-into-nothing', card: id, restriction })
  }
}
