import type { Place } from '../work/work.schema.ts'
import type { EpochDay } from '../calendar/dates.ts'
import { commonDays, toDaySpan, toSpan } from '../calendar/spans.ts'
import { stepsTo, type FactIndex, type Located } from './fact-index.ts'
import type { ProblemList } from './problem-list.ts'
import { endOf } from './versions-by-entry.ts'

/** How deep a place may lie in the tree. */
const DEEPEST_PLACE = 40

/** What a place may lie directly under. */
const MAY_LIE_UNDER = {
  program: ['nothing'],
  unit: ['program'],
  place: ['program', 'unit', 'place'],
} as const satisfies Record<Place['kind'], readonly (Place['kind'] | 'nothing')[]>

/**
 * The places are one tree, program > unit > place, at every entry that touches them: one root, no circle, nothing
 * under what may not hold it. A file without places is asked about none.
 */
export function checkPlaces(index: FactIndex, problems: ProblemList): void {
  const circled = new Set<string>()
  for (const located of index.of('places')) {
    checkParent(located, index, problems)
    checkChain(located, index, circled, problems)
    checkBooks(located, problems)
  }
  checkWithdrawn(index, problems)
  // A place that could not be read might be the root.
  if (!index.hasUnreadable('places')) checkRoots(index, problems)
}

function knownAs(index: FactIndex, id: string, n: number): Place | undefined {
  return index.knownAt('places', id, n)?.fact
}

function checkParent(located: Located<'places'>, index: FactIndex, problems: ProblemList): void {
  const { kind, parent, recordedIn } = located.fact
  const holder = parent === undefined ? undefined : knownAs(index, parent, recordedIn)
  // A parent that is not known is told of as a reference.
  if (parent !== undefined && holder === undefined) return
  const under = holder?.kind ?? 'nothing'
  const allowed: readonly string[] = MAY_LIE_UNDER[kind]
  if (allowed.includes(under)) return
  const field = parent === undefined ? 'kind' : 'parent'
  problems.add([...stepsTo(located), field], parent ?? kind, { kind: 'place-misplaced', place: kind, under })
}

/** A place that is withdrawn leaves nothing lying in it: a stand-down or a book above it would be lost. */
function checkWithdrawn(index: FactIndex, problems: ProblemList): void {
  const withdrawn = new Map<string, number[]>()
  for (const { fact } of index.of('places'))
    // A root that is gone is told of as such.
    if (
      fact.kind !== 'program' &&
      fact.supersededIn !== undefined &&
      knownAs(index, fact.id, fact.supersededIn) === undefined
    )
      entriesOf(withdrawn, fact.id).push(fact.supersededIn)
  for (const entries of withdrawn.values()) entries.sort((left, right) => left - right)
  for (const located of index.of('places')) {
    const { parent, recordedIn } = located.fact
    const knownAt = firstFrom(withdrawn.get(parent ?? '') ?? [], recordedIn)
    if (parent === undefined || knownAt === undefined || knownAt >= endOf(located)) continue
    problems.add([...stepsTo(located), 'parent'], parent, {
      kind: 'place-withdrawn-under',
      place: parent,
      knownAt,
    })
  }
}

function entriesOf(byId: Map<string, number[]>, id: string): number[] {
  const entries = byId.get(id) ?? []
  byId.set(id, entries)
  return entries
}

/** The first of numbers in order that is at least `from`. */
function firstFrom(numbers: readonly number[], from: number): number | undefined {
  let low = 0
  let high = numbers.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((numbers[middle] ?? Infinity) >= from) high = middle
    else low = middle + 1
  }
  return numbers[low]
}

/** A place names one book at most for a day. */
function checkBooks(located: Located<'places'>, problems: ProblemList): void {
  const named = (located.fact.books ?? []).map(({ book, firstDay, lastDay }) => ({
    book,
    ...toDaySpan(firstDay, lastDay),
  }))
  for (const [at, one] of named.entries()) {
    for (const other of named.slice(0, at)) {
      const both = commonDays(one, other)
      if (both === undefined) continue
      // A span without an end shares days without an end: its first shared year is told.
      const last = Math.min(both.last, both.first + 364) as EpochDay
      const days = toSpan({ first: both.first, last })
      problems.add([...stepsTo(located), 'books', at], one.book, {
        kind: 'place-books-overlap',
        books: [other.book, one.book],
        ...days,
      })
    }
  }
}

/** Walks up from a place as known when this version was recorded: whatever makes a circle was recorded last in it. */
function checkChain(
  located: Located<'places'>,
  index: FactIndex,
  circled: Set<string>,
  problems: ProblemList,
): void {
  const { id, recordedIn: knownAt } = located.fact
  const chain = [id]
  for (let place = knownAs(index, id, knownAt); place?.parent !== undefined;) {
    const { parent } = place
    if (chain.includes(parent)) {
      const places = chain.slice(chain.indexOf(parent))
      const key = `${knownAt} ${[...places].sort().join(' ')}`
      // Every place of a circle recorded in one entry meets it, and so does what lies under it.
      if (!circled.has(key))
        problems.add([...stepsTo(located), 'parent'], located.fact.parent, {
          kind: 'places-circle',
          places,
          knownAt,
        })
      circled.add(key)
      return
    }
    if (chain.length > DEEPEST_PLACE) {
      const figures = { kind: 'places-too-deep', most: DEEPEST_PLACE, knownAt } as const
      problems.add([...stepsTo(located), 'parent'], located.fact.parent, figures)
      return
    }
    chain.push(parent)
    place = knownAs(index, parent, knownAt)
  }
}

/** Counts the places and the roots after each entry that changes them. */
function checkRoots(index: FactIndex, problems: ProblemList): void {
  const changes = new Map<number, { places: number; roots: Place[]; gone: Set<string> }>()
  const at = (n: number) => {
    const change = changes.get(n) ?? { places: 0, roots: [], gone: new Set<string>() }
    changes.set(n, change)
    return change
  }
  for (const { fact } of index.of('places')) {
    at(fact.recordedIn).places += 1
    if (fact.kind === 'program') at(fact.recordedIn).roots.push(fact)
    if (fact.supersededIn === undefined) continue
    at(fact.supersededIn).places -= 1
    if (fact.kind === 'program') at(fact.supersededIn).gone.add(`${fact.id} ${fact.recordedIn}`)
  }
  const roots = new Map<string, Place>()
  let places = 0
  let wasWrong = false
  for (const [knownAt, change] of [...changes].sort(([left], [right]) => left - right)) {
    places += change.places
    for (const key of change.gone) roots.delete(key)
    for (const root of change.roots) roots.set(`${root.id} ${root.recordedIn}`, root)
    const isWrong = places > 0 && roots.size !== 1
    // A tree that stays wrong is told of once.
    if (isWrong && !wasWrong && roots.size === 0)
      problems.add(['places'], undefined, { kind: 'no-root-place', knownAt })
    if (isWrong && !wasWrong && roots.size > 1) {
      const ids = [...roots.values()].map((root) => root.id).slice(0, 20)
      problems.add(['places'], undefined, { kind: 'two-root-places', places: ids, knownAt })
    }
    wasWrong = isWrong
  }
}
