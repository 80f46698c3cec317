import { toEpochDay, type EpochDay } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import { COMPLEXITIES, type Complexity } from '../rulebooks/words.ts'
import type { Raise, Rating } from './work.schema.ts'

/** Why a rating is provisional, in the order in which reasons are told. */
export type ProvisionalReason = 'photo' | 'told' | 'rater-not-independent' | 'old'

/** What an item is planned as on a day. */
export type PlannedComplexity = {
  planned: Complexity | 'not-rated'
  /** The rating that stands, with why it is provisional (empty: it is not). */
  rating?: { id: string; rated: Complexity; planned: Complexity; because: readonly ProvisionalReason[] }
  raises: readonly string[]
}

/** Whether a person was independent for this very item, rated so, on the rating day. */
export type WasIndependent = (rater: string, complexity: Complexity, day: EpochDay) => boolean

type Made = { day: EpochDay }
type RatingMade = Made & { kind: 'rating'; record: Rating; rated: Complexity }
type RaiseMade = Made & { kind: 'raise'; record: Raise; first: EpochDay | undefined }

/** The ratings and raises of one item, in the order in which they were made. */
export class ItemRatings {
  private readonly events: readonly (RatingMade | RaiseMade)[]

  constructor(
    ratings: readonly Rating[],
    raises: readonly Raise[],
    private readonly wasIndependent: WasIndependent,
  ) {
    this.events = [
      ...raises.map((record): RaiseMade => ({
        kind: 'raise',
        record,
        day: toEpochDay(record.day),
        first: record.firstDay === undefined ? undefined : toEpochDay(record.firstDay),
      })),
      ...ratings.flatMap((record): RatingMade[] =>
        record.complexity === 'not-rated'
          ? []
          : [{ kind: 'rating', record, rated: record.complexity, day: toEpochDay(record.day) }],
      ),
    ].sort(inOrderMade)
  }

  /** The days on which the planned complexity may change, for the given numbers of days a rating stays good. */
  changes(goodFor: readonly number[]): number[] {
    return this.events.flatMap((event) =>
      event.kind === 'rating'
        ? [event.day, ...goodFor.map((days) => event.day + days + 1)]
        : event.first === undefined
          ? []
          : [event.first],
    )
  }

  /** What the item is planned as on a day; `goodFor` is the number of days after which a rating is provisional. */
  on(day: EpochDay, goodFor: number): PlannedComplexity {
    let standing: RatingMade | undefined
    let raises: Raise[] = []
    for (const event of this.events) {
      if (event.kind === 'raise') {
        if (event.first === undefined || event.first <= day) raises.push(event.record)
        continue
      }
      if (standing === undefined || order(event.rated) >= order(standing.rated)) standing = event
      const soFar = greatest([standing.rated, ...raises.map((raise) => raise.complexity)])
      const isLower = order(event.rated) < order(soFar) && event.record.how === 'on-site' && day >= event.day
      if (isLower && this.wasIndependent(event.record.rater, soFar, event.day)) {
        standing = event
        raises = []
      }
    }
    const raised = raises.map((raise) => raise.complexity)
    const raiseIds = raises.map((raise) => raise.id).sort(byText)
    if (standing === undefined)
      return { planned: raised.includes('high') ? 'high' : 'not-rated', raises: raiseIds }
    const because = this.reasons(standing, day, goodFor)
    const planned = because.length === 0 ? standing.rated : oneHigher(standing.rated)
    return {
      planned: greatest([planned, ...raised]),
      rating: { id: standing.record.id, rated: standing.rated, planned, because },
      raises: raiseIds,
    }
  }

  private reasons(
    { record, rated, day: ratedOn }: RatingMade,
    day: EpochDay,
    goodFor: number,
  ): ProvisionalReason[] {
    const because: ProvisionalReason[] = []
    if (record.how !== 'on-site') because.push(record.how)
    if (!this.wasIndependent(record.rater, rated, ratedOn)) because.push('rater-not-independent')
    if (day > ratedOn + goodFor) because.push('old')
    return because
  }
}

function inOrderMade(left: RatingMade | RaiseMade, right: RatingMade | RaiseMade): number {
  if (left.day !== right.day) return left.day - right.day
  if (left.kind !== right.kind) return left.kind === 'raise' ? -1 : 1
  return left.record.recordedIn - right.record.recordedIn || byText(left.record.id, right.record.id)
}

function order(complexity: Complexity): number {
  return COMPLEXITIES.indexOf(complexity)
}

function greatest(complexities: readonly Complexity[]): Complexity {
  return complexities.reduce(
    (most, complexity) => (order(complexity) > order(most) ? complexity : most),
    'least',
  )
}

/** One class higher; high stays high. */
function oneHigher(complexity: Complexity): Complexity {
  return COMPLEXITIES[order(complexity) + 1] ?? 'high'
}
