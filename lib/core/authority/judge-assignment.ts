import type { EpochDay } from '../calendar/dates.ts'
import { hasDay } from '../calendar/spans.ts'
import { cardStateOn, namesWork, recognisedLevel } from '../cards/card-index.ts'
import { judgeRestrictions, type RestrictedWork } from '../cards/restrictions.ts'
import { stopsOn, tellSuspended } from '../cards/suspensions.ts'
import { wantsAgreement } from '../people/person-rules.ts'
import { sortedTexts } from '../kernel/order.ts'
import type { EditionIndex } from '../rulebooks/edition-index.ts'
import type { RuleOf } from '../rulebooks/rules.schema.ts'
import type { Sink } from '../rulebooks/sink.ts'
import { NONE, TRAINING, UNKNOWN, worse, type StandingRank } from '../rulebooks/standing.ts'
import { COMPLEXITIES } from '../rulebooks/words.ts'
import type { Finding, Met } from './answer.ts'
import type { AskedWork } from './asked-work.ts'
import { isDesignated, type Authority } from './authority-index.ts'
import type { IndexedAssignment, PersonIndex } from './person-index.ts'
import { isAbout } from './suspended-on.ts'

/**
 * The assignments that open training on a day to somebody without a card in force: they name the item, cover the day,
 * the book allows the complexity, and somebody they name is designated.
 */
export function openAssignments(
  authority: Authority,
  edition: EditionIndex,
  person: PersonIndex,
  { work }: AskedWork,
  complexity: RestrictedWork['complexity'],
  day: EpochDay,
): readonly IndexedAssignment[] {
  const rule = edition.all('assignment')[0]
  const item = work.item
  if (rule === undefined || item === undefined || person.assignments.length === 0) return []
  if (!rule.workKinds.includes(work.workKind) || !edition.hasGrants(work.workKind, work.sawKind)) return []
  if (complexity !== 'not-rated' && COMPLEXITIES.indexOf(complexity) > COMPLEXITIES.indexOf(rule.upTo))
    return []
  if (hasCardInForce(edition, person, work, day)) return []
  return person.assignments.filter(
    ({ assignment, days }) =>
      hasDay(days, day) &&
      assignment.items.includes(item) &&
      designatedTrainers(authority, assignment, work, day).length > 0,
  )
}

/** Those whom an assignment names, the learner never, who are designated for the work on a day. */
function designatedTrainers(
  authority: Authority,
  { person, trainers }: IndexedAssignment['assignment'],
  { workKind, sawKind }: AskedWork['work'],
  day: EpochDay,
): readonly string[] {
  return trainers.filter(
    (trainer) => trainer !== person && isDesignated(authority, trainer, workKind, sawKind, day, () => true),
  )
}

function hasCardInForce(
  edition: EditionIndex,
  person: PersonIndex,
  { workKind, sawKind }: AskedWork['work'],
  day: EpochDay,
): boolean {
  return person.cards.some(
    (indexed) =>
      namesWork(indexed, workKind, sawKind) &&
      cardStateOn(indexed, day) === 'in-force' &&
      !indexed.suspensions.some((suspension) => stopsOn(suspension, day, workKind, sawKind)) &&
      recognisedLevel(edition, indexed.card, workKind, sawKind) !== undefined,
  )
}

/**
 * That the last day of a card for this work is not on record, which under an assignment is told in place of _no card_:
 * somebody with such a card may be on their own, and recording the day is what may be done about it.
 */
export function cardWithoutLastDay(
  edition: EditionIndex,
  person: PersonIndex,
  { work: { workKind, sawKind } }: AskedWork,
  day: EpochDay,
): Finding | undefined {
  const records = person.cards
    .filter(
      (indexed) =>
        namesWork(indexed, workKind, sawKind) &&
        cardStateOn(indexed, day) === 'no-last-day' &&
        recognisedLevel(edition, indexed.card, workKind, sawKind) !== undefined,
    )
    .map(({ card }) => card.id)
  if (records.length === 0) return undefined
  const rule = edition.ref(edition.one('card.days'))
  return { kind: 'not-on-record', what: 'last-day', rule, records: sortedTexts(records), allows: 'training' }
}

/**
 * Judges training under assignments that are open: the restrictions of every card within its days bind it, and a
 * suspension of any work kind stops it, one of a card's number included.
 */
export function judgeAssignments(
  authority: Authority,
  edition: EditionIndex,
  person: PersonIndex,
  open: readonly IndexedAssignment[],
  asked: AskedWork,
  work: RestrictedWork,
  day: EpochDay,
  sink: Sink<Finding, Met> | undefined,
): StandingRank {
  const [rule] = edition.all('assignment')
  if (rule === undefined) return NONE
  let rank: StandingRank = TRAINING
  if (sink !== undefined) tellTraining(authority, edition, rule, open, asked, work, day, sink)
  if (work.complexity === 'not-rated') {
    rank = UNKNOWN
    sink?.unmet({
      kind: 'complexity-unrated',
      rule: edition.ref(edition.one('complexity.rated')),
      records: [],
      allows: 'unknown',
    })
  }
  for (const indexed of person.cards) {
    const state = cardStateOn(indexed, day)
    if (state === 'in-force' || state === 'no-last-day')
      rank = worse(rank, judgeRestrictions(edition, indexed, work, sink).rank)
    for (const suspension of indexed.suspensions) {
      if (!stopsOn(suspension, day, undefined, work.sawKind)) continue
      rank = NONE
      if (sink !== undefined) tellSuspended(edition, suspension, person.id, day, sink)
    }
  }
  for (const suspension of [...person.suspensions, ...asked.placeSuspensions]) {
    if (
      !stopsOn(suspension, day, undefined, work.sawKind) ||
      !isAbout(suspension, person, day, wantsAgreement(edition))
    )
      continue
    rank = NONE
    if (sink !== undefined) tellSuspended(edition, suspension, person.id, day, sink)
  }
  return rank
}

function tellTraining(
  authority: Authority,
  edition: EditionIndex,
  rule: RuleOf<'assignment'>,
  open: readonly IndexedAssignment[],
  asked: AskedWork,
  { workKind, sawKind, complexity }: RestrictedWork,
  day: EpochDay,
  sink: Sink<Finding, Met>,
): void {
  const supervisor =
    complexity === 'not-rated' ? undefined : edition.supervisor(workKind, sawKind, complexity)?.level
  sink.unmet({
    kind: 'training-only',
    ...(supervisor === undefined ? {} : { supervisor }),
    trainers: sortedTexts(
      open.flatMap(({ assignment }) => designatedTrainers(authority, assignment, asked.work, day)),
    ),
    rule: edition.ref(rule),
    records: open.map(({ assignment }) => assignment.id).sort(),
    allows: 'training',
  })
}
