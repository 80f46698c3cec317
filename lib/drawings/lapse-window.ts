import { plusDays } from '../core/calendar/dates.ts'
import { lengthInDays, toDaySpan, type Span } from '../core/calendar/spans.ts'

/** How many days a line shows before and after those asked: some, but so many that the days asked stay in sight. */
const BEFORE = { least: 3, most: 30 }
const AFTER = { least: 10, most: 90 }

/** The days that a lapse line shows around the days asked: a third as many before, as many again after. */
export function lapseWindow(asked: Span): Span {
  const days = lengthInDays(toDaySpan(asked.first, asked.last))
  return {
    first: plusDays(asked.first, -within(Math.ceil(days / 3), BEFORE)),
    last: plusDays(asked.last, within(days, AFTER)),
  }
}

function within(count: number, { least, most }: { least: number; most: number }): number {
  return Math.min(Math.max(count, least), most)
}
