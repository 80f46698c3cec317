import type { CalendarDate } from '../../core/calendar/dates.ts'
import { dayOf, instantOf } from '../../platform/clock/clock.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { Runtime } from './runtime.ts'
import type { World } from './use-case.ts'

/** Before there is a program there is no time zone. Founding, which sets one, goes by the day in that one. */
const BEFORE_FOUNDING = 'UTC'

/** The world as a use case sees it: these facts, at this moment. */
export function worldOf(runtime: Runtime, snapshot: Snapshot): World {
  const now = runtime.clock.now()
  return {
    snapshot,
    today: todayOf(now, snapshot),
    now: instantOf(now),
    realNow: runtime.clock.realNow(),
    runtime,
  }
}

function todayOf(now: Date, snapshot: Snapshot): CalendarDate {
  return dayOf(now, snapshot.founded ? snapshot.program.program.timeZone : BEFORE_FOUNDING)
}
