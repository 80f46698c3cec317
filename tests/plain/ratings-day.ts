import type { NoteFigures, Work } from '../../lib/core/authority/answer.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Complexity } from '../../lib/core/rulebooks/words.ts'
import type { Raise, Rating } from '../../lib/core/work/work.schema.ts'
import { askAbout } from './asked.ts'
import {
  bookOn,
  editionOn,
  oneClassHigher,
  placesUpwards,
  rankOfComplexity,
  ruleOf,
  type Planned,
} from './books-day.ts'
import { dayNumber } from './days.ts'
import { compareTexts } from './findings.ts'
import { askOneDay } from './one-day.ts'

type Rated = Rating & { complexity: Complexity }
type Because = Extract<NoteFigures, { kind: 'rating-provisional' }>['because'][number]

/** The complexity planned for on a day, and what is provisional about the rating behind it. */
export type PlannedDay = {
  complexity: Planned
  provisional?: { rating: string; because: Because[]; rated: Complexity; planned: Complexity }
}

/** The complexity of the work on each day: as stated, or from the ratings and raises of the item it names. */
export function planner(records: Records, work: Work): (day: number) => PlannedDay {
  const { complexity, item } = work
  if (complexity !== undefined) return () => ({ complexity })
  if (item === undefined) return () => ({ complexity: 'not-rated' })
  const said = inOrder(records, item)
  const upwards = placesUpwards(records, work.place)
  const known = new Map<string, boolean>()
  const isIndependent = (rating: Rating, at: Complexity) => {
    const key = `${rating.rater} ${rating.day} ${at}`
    let answer = known.get(key)
    if (answer === undefined) {
      const rater = askAbout(records, { ...work, complexity: at }, rating.rater)
      answer = askOneDay(rater, dayNumber(rating.day), at).standing === 'independent'
      known.set(key, answer)
    }
    return answer
  }
  return (day) => {
    const { rating, raises } = inPlaceOn(said, day, isIndependent)
    if (rating === undefined) {
      return { complexity: raises.some((raise) => raise.complexity === 'high') ? 'high' : 'not-rated' }
    }
    const edition = editionOn(records, bookOn(records, upwards, day), day)
    const because: Because[] = []
    if (rating.how === 'photo' || rating.how === 'told') because.push(rating.how)
    if (!isIndependent(rating, rating.complexity)) because.push('rater-not-independent')
    const age = day - dayNumber(rating.day)
    if (edition !== undefined && age > ruleOf(edition, 'complexity.provisional').days) because.push('old')
    const planned = because.length > 0 ? oneClassHigher(rating.complexity) : rating.complexity
    const greatest = greatestOf([planned, ...raises.map((raise) => raise.complexity)]) ?? planned
    if (because.length === 0) return { complexity: greatest }
    const provisional = { rating: rating.id, because, rated: rating.complexity, planned }
    return { complexity: greatest, provisional }
  }
}

type Said = { raise: Raise; rating?: never } | { rating: Rating; raise?: never }

/** Ratings and raises of an item in the order of their days; raises before ratings of the same day. */
function inOrder(records: Records, item: string): Said[] {
  const key = (said: Said): [number, number, number, string] => {
    const fact = said.rating ?? said.raise
    return [dayNumber(fact.day), said.raise === undefined ? 1 : 0, fact.recordedIn, fact.id]
  }
  const all: Said[] = [
    ...records.raises.filter((raise) => raise.item === item).map((raise) => ({ raise })),
    ...records.ratings.filter((rating) => rating.item === item).map((rating) => ({ rating })),
  ]
  return all.sort((left, right) => {
    const [a, b] = [key(left), key(right)]
    return a[0] - b[0] || a[1] - b[1] || a[2] - b[2] || compareTexts(a[3], b[3])
  })
}

/** The rating and the raises that count on a day, walking through all that was said in order. */
function inPlaceOn(
  said: readonly Said[],
  day: number,
  isIndependent: (rating: Rating, at: Complexity) => boolean,
): { rating: Rated | undefined; raises: Raise[] } {
  let rating: Rated | undefined
  let raises: Raise[] = []
  for (const one of said) {
    if (one.raise !== undefined) {
      const { firstDay } = one.raise
      if (firstDay === undefined || dayNumber(firstDay) <= day) raises.push(one.raise)
      continue
    }
    if (!isRated(one.rating)) continue
    const next = one.rating
    const before = rating === undefined ? [] : [rating.complexity]
    const greatest = greatestOf([...before, ...raises.map((raise) => raise.complexity)])
    const isLower = greatest !== undefined && rankOfComplexity(next.complexity) < rankOfComplexity(greatest)
    if (isLower && dayNumber(next.day) <= day && next.how === 'on-site' && isIndependent(next, greatest)) {
      rating = next
      raises = []
    } else if (
      rating === undefined ||
      rankOfComplexity(next.complexity) >= rankOfComplexity(rating.complexity)
    ) {
      rating = next
    }
  }
  return { rating, raises }
}

function isRated(rating: Rating): rating is Rated {
  return rating.complexity !== 'not-rated'
}

function greatestOf(classes: readonly Complexity[]): Complexity | undefined {
  return [...classes].sort((left, right) => rankOfComplexity(right) - rankOfComplexity(left))[0]
}
