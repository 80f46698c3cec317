import type { CalendarDate } from '../../core/calendar/dates.ts'
import { programDoubts } from '../../core/program/doubts.ts'
import type { Doubt } from '../../core/program/problems.ts'
import { SECTION_NAMES } from '../../core/program/sections.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { World } from '../door/use-case.ts'

/** What should be looked at, by section and id of the record, as `cards c-1`. */
export type DoubtsByRecord = ReadonlyMap<string, readonly Doubt[]>

const found = new WeakMap<Snapshot, { today: CalendarDate; doubts: DoubtsByRecord }>()

/** What about the records as now known somebody should look at today; looked for once for each snapshot and day. */
export function doubtsByRecord({ snapshot, today }: Pick<World, 'snapshot' | 'today'>): DoubtsByRecord {
  const held = found.get(snapshot)
  if (held?.today === today) return held.doubts
  const doubts = new Map<string, Doubt[]>()
  for (const doubt of programDoubts(snapshot.program, [], today)) {
    const section = SECTION_NAMES.find((name) => doubt.path.startsWith(`${name}[`))
    if (section === undefined) continue
    const key = `${section} ${doubt.id}`
    doubts.set(key, [...(doubts.get(key) ?? []), doubt])
  }
  found.set(snapshot, { today, doubts })
  return doubts
}
