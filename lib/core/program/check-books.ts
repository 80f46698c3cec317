import { isKnownAt } from '../kernel/versions.ts'
import type { ShippedEdition } from '../rulebooks/books.schema.ts'
import { checkEdition } from '../rulebooks/edition-check.ts'
import { checkTiling, type TilingProblem } from '../rulebooks/tiling.ts'
import { stepsTo, type FactIndex, type Located } from './fact-index.ts'
import type { PathStep } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import type { ProblemFigures } from './problems.ts'

/**
 * Each edition is sound in itself, each book has one, and the editions of a book tile the calendar as known at every
 * entry that touches them.
 */
export function checkBooks(index: FactIndex, problems: ProblemList): void {
  for (const located of index.of('editions')) checkOneEdition(stepsTo(located), located.fact, [], problems)
  // An edition that could not be read might fill what looks like a gap.
  if (index.hasUnreadable('editions')) return
  const byBook = new Map<string, Located<'editions'>[]>()
  for (const located of index.of('editions')) {
    const editions = byBook.get(located.fact.book)
    if (editions === undefined) byBook.set(located.fact.book, [located])
    else editions.push(located)
  }
  for (const [book, versions] of index.byId('books')) {
    const last = versions.at(-1)
    if (last === undefined || byBook.has(book)) continue
    problems.add(stepsTo(last), book, { kind: 'book-without-edition', book })
  }
  for (const editions of byBook.values()) checkTilingOverTime(editions, problems)
}

/**
 * Adds the faults of one edition. Without cautions the references to them are not asked about here; backward days are
 * told of like those of every other record.
 */
function checkOneEdition(
  steps: readonly PathStep[],
  edition: Omit<ShippedEdition, 'id'>,
  cautions: readonly string[],
  problems: ProblemList,
): void {
  for (const { path, ...fault } of checkEdition(edition, cautions)) {
    if (fault.kind === 'days-backwards' || fault.kind === 'unknown-caution') continue
    problems.add([...steps, ...path], undefined, { kind: 'edition-fault', fault })
  }
}

function checkTilingOverTime(editions: readonly Located<'editions'>[], problems: ProblemList): void {
  const entries = new Set<number>()
  for (const { fact } of editions) {
    entries.add(fact.recordedIn)
    if (fact.supersededIn !== undefined) entries.add(fact.supersededIn)
  }
  const told = new Set<string>()
  for (const knownAt of [...entries].sort((left, right) => left - right)) {
    const known = editions.filter(({ fact }) => isKnownAt(fact, knownAt))
    for (const problem of checkTiling(known.map(({ fact }) => fact))) {
      const key = JSON.stringify(problem)
      // What stays wrong from entry to entry is told of once.
      if (told.has(key)) continue
      told.add(key)
      const after = known.find(({ fact }) => fact.id === problem.after)
      if (after !== undefined)
        problems.add([...stepsTo(after), 'firstDay'], after.fact.firstDay, tilingFigures(problem, knownAt))
    }
  }
}

/** A fault of tiling among the others of a file. */
export function tilingFigures(problem: TilingProblem, knownAt?: number): ProblemFigures {
  const when = knownAt === undefined ? {} : { knownAt }
  const { book, before, after, firstDay: first } = problem
  switch (problem.kind) {
    case 'gap':
      return { kind: 'editions-gap', book, first, last: problem.lastDay, ...when }
    case 'overlap':
      return {
        kind: 'editions-overlap',
        book,
        editions: [before, after],
        first,
        last: problem.lastDay,
        ...when,
      }
    case 'open-end-not-last':
      return { kind: 'editions-overlap', book, editions: [before, after], first, ...when }
  }
}
