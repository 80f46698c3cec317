import { toEpochDay, type CalendarDate } from '../core/calendar/dates.ts'
import { commonDays, toDaySpan, type DaySpan, type Span } from '../core/calendar/spans.ts'
import type { Standing } from '../core/rulebooks/standing.ts'

/** What a run of days is drawn as: a standing, or the special no of a suspension. */
export type RunKind = Standing | 'suspended'

/** A run of days of one kind; a side that is left out is without limit. */
export type LapseRun = { first?: CalendarDate; last?: CalendarDate; kind: RunKind }

/** A bar on the line. `left` and `width` are percent of the whole line, to a thousandth. */
export type LapseBar = {
  kind: Exclude<RunKind, 'none'>
  left: number
  width: number
  /** The last day, where it lies on the line: a cut stands there. */
  cut?: CalendarDate
  /** Whether the run goes on past the right edge. */
  goesOn: boolean
}

/** A lapse line as shapes: bars from left to right, the days asked, today; positions in percent. */
export type LapseLine = {
  bars: readonly LapseBar[]
  asked?: { left: number; width: number }
  /** The left edge of today's day; absent where today is not on the line. */
  today?: number
}

/**
 * Draws runs of days as bars between the first and the last day of a window, both in. A day takes its whole width, so
 * that a bar of one day is seen and a cut stands where its last day ends. No bar is drawn where the answer is no.
 */
export function lapseLine(
  window: Span,
  runs: readonly LapseRun[],
  { asked, today }: { asked?: Span; today?: CalendarDate } = {},
): LapseLine {
  const days = toDaySpan(window.first, window.last)
  const bars = runs.flatMap(({ kind, first, last }): LapseBar[] => {
    const run = toDaySpan(first, last)
    const shown = commonDays(run, days)
    if (kind === 'none' || shown === undefined) return []
    const isCut = last !== undefined && run.last <= days.last && !isFollowedByLike(runs, kind, run)
    return [
      {
        kind,
        ...place(shown, days),
        ...(isCut ? { cut: last } : {}),
        goesOn: run.last > days.last,
      },
    ]
  })
  const wash = asked === undefined ? undefined : commonDays(toDaySpan(asked.first, asked.last), days)
  const now = today === undefined ? undefined : toEpochDay(today)
  return {
    bars,
    ...(wash === undefined ? {} : { asked: place(wash, days) }),
    ...(now === undefined || now < days.first || now > days.last
      ? {}
      : { today: percent(now - days.first, days) }),
  }
}

/** Two runs of one kind that touch are one bar to the eye, and no cut parts them. */
function isFollowedByLike(runs: readonly LapseRun[], kind: RunKind, { last }: DaySpan): boolean {
  return runs.some(
    (other) => other.kind === kind && other.first !== undefined && toEpochDay(other.first) === last + 1,
  )
}

function place(shown: DaySpan, days: DaySpan): { left: number; width: number } {
  const left = percent(shown.first - days.first, days)
  return { left, width: rounded(percent(shown.last + 1 - days.first, days) - left) }
}

function percent(count: number, days: DaySpan): number {
  return rounded((count / (days.last - days.first + 1)) * 100)
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000
}
