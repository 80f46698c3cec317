import type { EpochDay } from '../calendar/dates.ts'
import type { DaySpan } from '../calendar/spans.ts'

/** Cuts a span where the work or a person may change: both lists of days are sorted, and walked side by side. */
export function elementaryPieces(
  span: DaySpan,
  person: readonly number[],
  work: readonly number[],
): DaySpan[] {
  const pieces: DaySpan[] = []
  let first: number = span.first
  let ofPerson = countAtOrBefore(person, first)
  let ofWork = countAtOrBefore(work, first)
  for (;;) {
    const next = Math.min(person[ofPerson] ?? Infinity, work[ofWork] ?? Infinity)
    if (next > span.last) break
    pieces.push({ first: first as EpochDay, last: (next - 1) as EpochDay })
    first = next
    while ((person[ofPerson] ?? Infinity) <= first) ofPerson += 1
    while ((work[ofWork] ?? Infinity) <= first) ofWork += 1
  }
  pieces.push({ first: first as EpochDay, last: span.last })
  return pieces
}

/** How many of the sorted days lie at or before a day. */
export function countAtOrBefore(sorted: readonly number[], day: number): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sorted[middle] ?? 0) <= day) low = middle + 1
    else high = middle
  }
  return low
}

/** Days sorted, each once. */
export function sortedDays(days: Iterable<number>): number[] {
  return [...new Set(days)].sort((left, right) => left - right)
}
