import type { Sections } from '../../lib/core/authority/records.ts'
import { plusDays } from '../../lib/core/calendar/dates.ts'
import type { Inches } from '../../lib/core/kernel/measures.ts'
import type { Complexity } from '../../lib/core/rulebooks/words.ts'
import type { Draw } from '../properties/draw.ts'
import {
  COOPERATOR,
  COOPERATOR_UNIT,
  SEASON_DAYS,
  SEASON_FIRST,
  SPECIES,
  UNITS,
  dayBefore,
  placesOf,
} from './season.ts'

type WorkSections = 'places' | 'items' | 'expectedWork' | 'ratings' | 'raises' | 'assignments'

/** The places and the work of a season, and who is to learn on it. */
export type BigWork = { [Name in WorkSections]: Sections[Name][] }

/** Logs and trees of a season, one of eight as expected work; rated by the staff. */
export function drawWork(draw: Draw, count: number, staff: readonly string[]): BigWork {
  const work: BigWork = { places: [], items: [], expectedWork: [], ratings: [], raises: [], assignments: [] }
  addPlaces(work)
  for (let index = 1; index <= count; index += 1) addItem(draw, work, `item-${index}`, staff)
  return work
}

/** Assigns a learner to some items, from the first through the last of their days. */
export function addAssignment(draw: Draw, work: BigWork, learner: string, staff: readonly string[]): void {
  const items = Array.from({ length: 1 + draw.below(4) }, () => draw.pick(work.items))
  const days = items.flatMap(({ firstDay, lastDay }) => [firstDay ?? SEASON_FIRST, lastDay ?? SEASON_FIRST])
  const sorted = days.sort()
  work.assignments.push({
    id: `assignment-${learner}`,
    recordedIn: 1,
    person: learner,
    items: [...new Set(items.map(({ id }) => id))],
    firstDay: sorted[0] ?? SEASON_FIRST,
    lastDay: sorted.at(-1) ?? SEASON_FIRST,
    trainers: [draw.pick(staff)],
  })
}

function addPlaces(work: BigWork): void {
  work.places.push({ id: 'program', recordedIn: 1, name: 'Invented program', kind: 'program' })
  for (const unit of UNITS) {
    const books =
      unit === COOPERATOR_UNIT
        ? { books: [{ book: COOPERATOR, firstDay: plusDays(SEASON_FIRST, -1000) }] }
        : {}
    work.places.push({
      id: unit,
      recordedIn: 1,
      name: `Invented ${unit}`,
      kind: 'unit',
      parent: 'program',
      ...books,
    })
    for (const id of placesOf(unit))
      work.places.push({ id, recordedIn: 1, name: `Invented ${id}`, kind: 'place', parent: unit })
  }
}

function addItem(draw: Draw, work: BigWork, id: string, staff: readonly string[]): void {
  const length = 1 + draw.below(8)
  const firstDay = plusDays(SEASON_FIRST, draw.below(SEASON_DAYS - length + 1))
  const item = {
    id,
    recordedIn: 1,
    name: `Invented ${id}`,
    workKind: draw.chance(68) ? ('bucking' as const) : ('felling' as const),
    diameter: (8 + draw.below(32 * 4) / 4) as Inches,
    place: draw.pick(placesOf(draw.pick(UNITS))),
    firstDay,
    lastDay: plusDays(firstDay, length - 1),
    hands: draw.chance(80) ? ('two' as const) : ('one' as const),
    ...(draw.chance(90) ? { species: draw.pick(SPECIES) } : {}),
  }
  const complexity = draw.weighted<Complexity>([[50, 'least'], [35, 'moderate'], [15, 'high']]) // prettier-ignore
  if (draw.chance(12)) {
    work.expectedWork.push({ ...item, least: 1, most: 12, complexity })
    return
  }
  work.items.push(item)
  if (draw.chance(6)) return
  const rating = {
    id: `rating-${id}`,
    recordedIn: 1,
    item: id,
    complexity,
    rater: draw.pick(staff),
    // Some ratings get old within the days of their item.
    day: dayBefore(draw, 200),
    how: draw.weighted([[88, 'on-site'], [8, 'photo'], [4, 'told']] as const), // prettier-ignore
  }
  work.ratings.push(rating)
  if (draw.chance(6))
    work.raises.push({
      id: `raise-${id}`,
      recordedIn: 1,
      item: id,
      complexity: 'high',
      by: draw.pick(staff),
      day: plusDays(firstDay, draw.below(length)),
      ...(draw.chance(50) ? { firstDay: plusDays(firstDay, draw.below(length)) } : {}),
      reason: 'Invented reason',
    })
}
