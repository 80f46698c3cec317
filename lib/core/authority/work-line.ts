import type { EpochDay } from '../calendar/dates.ts'
import { toEpochDay } from '../calendar/dates.ts'
import { BEFORE_ALL } from '../calendar/spans.ts'
import type { IndexedSuspension } from '../cards/suspensions.ts'
import { ItemRatings, type PlannedComplexity } from '../work/ratings.ts'
import { inForceOn } from '../rulebooks/edition-index.ts'
import { INDEPENDENT } from '../rulebooks/standing.ts'
import type { Work } from './answer.ts'
import type { AskedWork, WorkPiece } from './asked-work.ts'
import { bookOn, type Authority } from './authority-index.ts'
import { countAtOrBefore, sortedDays } from './elementary-pieces.ts'
import { caseOf, judgeDay } from './judge-day.ts'

/** How long a rating stays good where no edition governs the day: nothing rests on it then. */
const NEVER_OLD = 1_000_000

/** Makes the work of a question ready: its places, its books by days, its planned complexity by days. */
export function openWork(authority: Authority, work: Work): AskedWork {
  const places = work.place === undefined ? undefined : authority.places.chain(work.place)
  const placeSuspensions = (places ?? []).flatMap((place) => authority.placeSuspensions.get(place) ?? [])
  const plannedOn = planner(authority, work)
  const goodFor = authority.editions.flatMap((edition) =>
    edition.all('complexity.provisional').map((rule) => rule.days),
  )
  const changes = [
    ...authority.editions.flatMap(({ days, edition }) => [
      days.first,
      days.last + 1,
      ...(edition.successor === undefined ? [] : [toEpochDay(edition.successor.day) + 1]),
    ]),
    ...(work.place === undefined ? [] : authority.places.changes(work.place)),
    ...placeSuspensions.flatMap(({ days, noticeDays }) => [
      days.first,
      days.last + 1,
      ...noticeDays.values(),
    ]),
    ...plannedOn.changes(goodFor),
  ]
  const sorted = sortedDays(changes)
  const pieces: (WorkPiece | undefined)[] = []
  const pieceOn = (day: EpochDay): WorkPiece => {
    const index = countAtOrBefore(sorted, day)
    const known = pieces[index]
    if (known !== undefined) return known
    const book = bookOn(authority, work.place, day)
    const edition = inForceOn(authority.editionsOf(book), day)
    const days = edition?.all('complexity.provisional')[0]?.days ?? NEVER_OLD
    const piece = { book, edition, planned: plannedOn.on(day, days) }
    pieces[index] = piece
    return piece
  }
  const governance = () => governanceOf(sorted, pieceOn, placeSuspensions)
  return { work, places, placeSuspensions, governance, changes: sorted, pieceOn }
}

function governanceOf(
  changes: readonly number[],
  pieceOn: (day: EpochDay) => WorkPiece,
  placeSuspensions: readonly IndexedSuspension[],
): string {
  const governed: string[] = placeSuspensions.map(({ suspension }) => suspension.id)
  for (const day of [BEFORE_ALL, ...changes]) {
    const { book, edition, planned } = pieceOn(day as EpochDay)
    const rating =
      planned.rating !== undefined && planned.rating.because.length > 0 ? planned.rating : undefined
    const here = JSON.stringify([book, edition?.edition.id ?? '', planned.planned, rating ?? ''])
    if (!(governed.at(-1)?.endsWith(here) ?? false)) governed.push(`${day} ${here}`)
  }
  return governed.join('\n')
}

type Planner = {
  on(day: EpochDay, goodFor: number): PlannedComplexity
  changes(goodFor: readonly number[]): number[]
}

function planner(authority: Authority, work: Work): Planner {
  const stated = work.complexity
  if (stated !== undefined || work.item === undefined)
    return { on: () => ({ planned: stated ?? 'not-rated', raises: [] }), changes: () => [] }
  return new ItemRatings(
    authority.ratingsOf(work.item),
    authority.raisesOf(work.item),
    (rater, complexity, day) => {
      const person = authority.person(rater)
      if (person === undefined) return false
      return (
        judgeDay(caseOf(authority, person, openWork(authority, { ...work, complexity })), day) === INDEPENDENT
      )
    },
  )
}
