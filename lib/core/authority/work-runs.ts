import type { Authority } from './authority-index.ts'
import type { Question } from './question.ts'
import { openWork } from './work-line.ts'
import { Cuts, longestRuns } from '../calendar/partitions.ts'
import { toDaySpan, toSpan, type Span } from '../calendar/spans.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { Complexity } from '../rulebooks/words.ts'

/** The longest runs of days on which one edition governs the work at one planned complexity. */
export type WorkRun = Span & {
  book: string
  edition?: EditionIndex
  planned: Complexity | 'not-rated'
}

/** What governs the work on the days asked, and how complex it is planned there. */
export function workRuns(authority: Authority, question: Question): WorkRun[] {
  const asked = openWork(authority, question.work)
  const cuts = new Cuts(toDaySpan(question.first, question.last))
  for (const day of asked.changes) cuts.at(day)
  const pieces = cuts.pieces().map((days) => {
    const { book, edition, planned } = asked.pieceOn(days.first)
    return { ...days, value: { book, edition, planned: planned.planned } }
  })
  return longestRuns(
    pieces,
    (left, right) =>
      left.book === right.book && left.edition === right.edition && left.planned === right.planned,
  ).map(({ value: { book, edition, planned }, ...days }) => ({
    ...toSpan(days),
    book,
    ...(edition === undefined ? {} : { edition }),
    planned,
  }))
}

/**
 * The levels that the governing editions let supervise this work on every day asked, lowest first: where the work is
 * planned higher on some of the days, a level that is not enough for those is not named.
 */
export function supervisors(runs: readonly WorkRun[], question: Question): string[] {
  const { workKind, sawKind } = question.work
  const ofRuns = runs.flatMap(({ edition, planned }) =>
    edition === undefined || planned === 'not-rated'
      ? []
      : [edition.independents(workKind, sawKind, planned).map(({ level }) => level)],
  )
  const [first = [], ...others] = ofRuns
  return first.filter((level) => others.every((levels) => levels.includes(level)))
}
