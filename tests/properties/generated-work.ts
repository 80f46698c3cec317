import type { Sections } from '../../lib/core/authority/records.ts'
import { plusDays } from '../../lib/core/calendar/dates.ts'
import type { Inches } from '../../lib/core/kernel/measures.ts'
import { COMPLEXITIES, HANDS, WORK_KINDS } from '../../lib/core/rulebooks/words.ts'
import type { Part } from '../builders/records.ts'
import { BOOKS } from './generated-books.ts'
import { LIMITS, SPECIES } from './generated-cards.ts'
import { designation } from './generated-people.ts'
import type { Calendar, Draw } from './draw.ts'

type WorkSections =
  'places' | 'items' | 'expectedWork' | 'ratings' | 'raises' | 'assignments' | 'designations'

/** The tree of places, the logs and trees with their ratings, and who is assigned to learn on them. */
export function generateWork(
  draw: Draw,
  calendar: Calendar,
  people: readonly string[],
): Required<Pick<Part, WorkSections>> {
  const items = Array.from({ length: 1 + draw.below(3) }, (_, index) => ({
    id: `item-${index + 1}`,
    recordedIn: 1,
    ...shape(draw, calendar),
  }))
  const expectedWork = draw.chance(40)
    ? [
        {
          id: 'expected-1',
          recordedIn: 1,
          ...shape(draw, calendar),
          least: 1,
          most: 5,
          complexity: draw.pick(COMPLEXITIES),
        },
      ]
    : []
  const itemIds = [...items, ...expectedWork].map(({ id }) => id)
  const learners = people.length > 1 ? draw.some(people, 35) : []
  const assigned = learners.map((person) => assignment(draw, calendar, person, people, itemIds))
  return {
    places: places(draw, calendar),
    items,
    expectedWork,
    ratings: items.flatMap(({ id }) => ratings(draw, calendar, id, people)),
    raises: items.flatMap(({ id }) => raises(draw, calendar, id, people)),
    assignments: assigned,
    designations: assigned.flatMap(({ trainers }, index) =>
      draw.some(trainers, 75).map((trainer) => designation(draw, calendar, trainer, 10 + index)),
    ),
  }
}

/** A diameter at a limit of a restriction, a sixteenth beside it, or small. */
export function diameter(draw: Draw): Inches {
  return (draw.pick(LIMITS) + draw.pick([-4, -0.0625, 0, 0, 0.0625])) as Inches
}

/** How somebody works, where it is said: hands, species and place may each be unsaid. */
export function circumstances(draw: Draw) {
  return {
    ...(draw.amiss(30) ? {} : { hands: draw.pick(HANDS) }),
    ...(draw.amiss(30) ? {} : { species: draw.pick([...SPECIES, ...SPECIES, 'invented oak']) }),
    ...(draw.amiss(35) ? {} : { place: draw.pick(['program', 'unit-1', 'place-1', 'place-2', 'place-3']) }),
  }
}

function shape(draw: Draw, calendar: Calendar) {
  return {
    name: 'Invented work',
    workKind: draw.pick(WORK_KINDS),
    diameter: diameter(draw),
    ...circumstances(draw),
    ...(draw.chance(25) ? calendar.span(60) : {}),
  }
}

function places(draw: Draw, calendar: Calendar): Sections['places'][] {
  const place = (id: string, kind: Sections['places']['kind'], parent?: string) => ({
    id,
    recordedIn: 1,
    name: `Invented ${id}`,
    kind,
    ...(parent === undefined ? {} : { parent }),
    ...booksByDays(draw, calendar),
  })
  return [
    place('program', 'program'),
    place('unit-1', 'unit', 'program'),
    place('unit-2', 'unit', 'program'),
    place('place-1', 'place', 'unit-1'),
    place('place-2', 'place', 'unit-2'),
    place('place-3', 'place', 'place-1'),
  ]
}

function booksByDays(draw: Draw, calendar: Calendar): Pick<Sections['places'], 'books'> {
  if (!draw.amiss(35)) return {}
  const { firstDay, lastDay } = calendar.span(60)
  const book = () => (draw.chance(40) ? 'home' : draw.pick(BOOKS))
  if (draw.chance(40)) return { books: [{ book: book(), firstDay }] }
  const one = { book: book(), firstDay, lastDay }
  if (draw.chance(50)) return { books: [one] }
  return { books: [one, { book: book(), firstDay: plusDays(lastDay, 1 + draw.below(2)) }] }
}

function ratings(
  draw: Draw,
  calendar: Calendar,
  item: string,
  people: readonly string[],
): Sections['ratings'][] {
  const count = draw.weighted([[15, 0], [40, 1], [25, 2], [14, 3], [6, 4]]) // prettier-ignore
  return Array.from({ length: count }, (_, index) => ({
    id: `rating-${item}-${index}`,
    recordedIn: 1 + draw.below(4),
    item,
    complexity: draw.amiss(10) ? 'not-rated' : draw.pick(COMPLEXITIES),
    rater: draw.pick(people),
    day: draw.chance(35) ? calendar.daysBefore(draw.pick([1, 5, 20, 179, 180, 181])) : calendar.near(),
    how: draw.amiss(35) ? draw.pick(['photo', 'told']) : 'on-site',
  }))
}

function raises(
  draw: Draw,
  calendar: Calendar,
  item: string,
  people: readonly string[],
): Sections['raises'][] {
  const count = draw.weighted([[65, 0], [25, 1], [10, 2]]) // prettier-ignore
  return Array.from({ length: count }, (_, index) => {
    const day = calendar.near()
    return {
      id: `raise-${item}-${index}`,
      recordedIn: 1 + draw.below(4),
      item,
      complexity: draw.pick(['moderate', 'high', 'least']),
      by: draw.pick(people),
      day,
      ...(draw.chance(40) ? { firstDay: calendar.near() } : {}),
      reason: 'Invented reason',
    }
  })
}

function assignment(
  draw: Draw,
  calendar: Calendar,
  person: string,
  people: readonly string[],
  items: readonly string[],
): Sections['assignments'] {
  const trainers = people.filter((id) => id !== person)
  return {
    id: `assignment-${person}`,
    recordedIn: 1,
    person,
    items: draw.someOf(items, 70),
    ...calendar.span(65),
    trainers: draw.someOf(trainers, 40),
  }
}
