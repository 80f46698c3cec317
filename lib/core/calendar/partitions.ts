import type { EpochDay } from './dates.ts'
import type { DaySpan } from './spans.ts'

/** One piece of a partition: the days from `first` through `last` share a value. */
export type Piece<Value> = DaySpan & { value: Value }

/** Collects the days on which something may change, so that a span can be cut there and nowhere else. */
export class Cuts {
  private readonly days: number[] = []

  constructor(private readonly span: DaySpan) {}

  /** Marks the first day of something new; days outside the span are let go. */
  at(day: number): void {
    if (day > this.span.first && day <= this.span.last) this.days.push(day)
  }

  /** Marks the first day of a span and the day after its last. */
  around(span: DaySpan): void {
    this.at(span.first)
    this.at(span.last + 1)
  }

  /** The pieces of the span between the marked days, in order, without gap or overlap. */
  pieces(): DaySpan[] {
    const sorted = this.days.sort((left, right) => left - right)
    const pieces: DaySpan[] = []
    let first: number = this.span.first
    for (const day of sorted) {
      if (day === first) continue
      pieces.push({ first: first as EpochDay, last: (day - 1) as EpochDay })
      first = day
    }
    pieces.push({ first: first as EpochDay, last: this.span.last })
    return pieces
  }
}

/** Joins neighbouring pieces with equal values: the longest runs. */
export function longestRuns<Value>(
  pieces: readonly Piece<Value>[],
  isEqual: (left: Value, right: Value) => boolean,
): Piece<Value>[] {
  const runs: Piece<Value>[] = []
  for (const piece of pieces) {
    const open = runs.at(-1)
    if (open !== undefined && open.last + 1 === piece.first && isEqual(open.value, piece.value))
      open.last = piece.last
    else runs.push({ ...piece })
  }
  return runs
}
