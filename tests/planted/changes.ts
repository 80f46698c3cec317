/** One change planted in a rule: a passage of a file that stands there once, and what takes its place. */
export type PlantedChange = { rule: string; file: string; from: string; to: string }

const cards = 'lib/core/cards/card-index.ts'
const people = 'lib/core/people'
const authority = 'lib/core/authority'

/** Changes that each make one rule wrong, in the way a tired person would. */
export const CHANGES: readonly PlantedChange[] = [
  {
    rule: 'the effective day counts',
    file: cards,
    from: 'if (day < indexed.effective)',
    to: 'if (day <= indexed.effective)',
  },
  {
    rule: 'the last day counts',
    file: cards,
    from: "return day > indexed.last ? 'ended'",
    to: "return day >= indexed.last ? 'ended'",
  },
  {
    rule: 'a withdrawn card stops on the day decided',
    file: cards,
    from: 'if (day >= indexed.endsFrom)',
    to: 'if (day > indexed.endsFrom)',
  },
  {
    rule: 'without a last day it is unknown',
    file: cards,
    from: "if (indexed.last === undefined) return 'no-last-day'",
    to: "if (indexed.last === undefined) return 'in-force'",
  },
  {
    rule: 'a card of another book counts only as recognised',
    file: cards,
    from: 'if (card.book === edition.edition.book)',
    to: 'if (card.book !== "")',
  },
  {
    rule: 'a window takes in its last day',
    file: 'lib/core/cards/extensions.ts',
    from: 'end <= toEpochDay(of.lastDay)',
    to: 'end < toEpochDay(of.lastDay)',
  },
  {
    rule: 'the greatest diameter is inside',
    file: 'lib/core/cards/restrictions.ts',
    from: 'if (work.diameter <= restriction.inches)',
    to: 'if (work.diameter < restriction.inches)',
  },
  {
    rule: 'what the question does not state is unknown',
    file: 'lib/core/cards/restrictions.ts',
    from: "if (work.workKind !== 'bucking' || work.hands === 'two') return undefined",
    to: "if (work.workKind !== 'bucking' || work.hands !== 'one') return undefined",
  },
  {
    rule: 'a lift ends a suspension the day before',
    file: 'lib/core/cards/suspensions.ts',
    from: 'toEpochDay(lift.day) - 1',
    to: 'toEpochDay(lift.day)',
  },
  {
    rule: 'a suspension covers the work kinds it names',
    file: 'lib/core/cards/suspensions.ts',
    from: 'if (workKinds?.includes(workKind) === false) return false',
    to: 'if (workKinds?.includes(workKind) === true) return false',
  },
  {
    rule: 'on the day notice arrives it is after notice',
    file: 'lib/core/cards/suspensions.ts',
    from: "day < noticeDay ? 'before'",
    to: "day <= noticeDay ? 'before'",
  },
  {
    rule: 'an age is reached on the birthday',
    file: `${people}/ages.ts`,
    from: 'return day >= this.dayOf',
    to: 'return day > this.dayOf',
  },
  {
    rule: 'born on 29 February, of age on 1 March',
    file: 'lib/core/calendar/anniversaries.ts',
    from: '-03-01`',
    to: '-02-28`',
  },
  {
    rule: 'a term ends the day before the anniversary',
    file: 'lib/core/calendar/anniversaries.ts',
    from: "return end === 'on-anniversary' ? day : plusDays(day, -1)",
    to: 'return end === undefined ? plusDays(day, -1) : day',
  },
  {
    rule: 'a certificate counts through its last day',
    file: `${people}/certificate-index.ts`,
    from: 'if (last !== undefined && last < day)',
    to: 'if (last !== undefined && last <= day)',
  },
  {
    rule: 'a self-stated certificate is not a yes',
    file: `${people}/certificate-index.ts`,
    from: 'if (!certificate.seen &&',
    to: 'if (certificate.seen &&',
  },
  {
    rule: 'the skills check comes on or before the online class',
    file: `${people}/certificate-index.ts`,
    from: 'other.firstDay <= online.firstDay',
    to: 'other.firstDay >= online.firstDay',
  },
  {
    rule: 'of several memberships the strictest counts',
    file: `${people}/person-rules.ts`,
    from: 'const rank = ranks.reduce(worse, INDEPENDENT)',
    to: 'const rank = ranks[0] ?? INDEPENDENT',
  },
  {
    rule: 'an agreement without a last day is unknown',
    file: `${people}/memberships.ts`,
    from: "return first === undefined ? 'undated' : 'open'",
    to: "return first === undefined ? 'undated' : 'covers'",
  },
  {
    rule: 'a refused permission is a no',
    file: `${people}/person-rules.ts`,
    from: "const allows = says === 'not-on-record' || says === 'ended' ? 'unknown' : 'none'",
    to: "const allows = says === 'not-on-record' || says === 'ended' ? 'none' : 'unknown'",
  },
  {
    rule: 'a rating is good for so many days',
    file: 'lib/core/work/ratings.ts',
    from: 'if (day > ratedOn + goodFor)',
    to: 'if (day >= ratedOn + goodFor)',
  },
  {
    rule: 'a lower rating is made on site',
    file: 'lib/core/work/ratings.ts',
    from: "event.record.how === 'on-site' &&",
    to: "event.record.how !== 'told' &&",
  },
  {
    rule: 'training under an assignment is stopped by a suspension of any work kind',
    file: 'lib/core/cards/suspensions.ts',
    from: 'if (workKind === undefined) return true',
    to: 'if (workKind === undefined) return workKinds === undefined',
  },
  {
    rule: 'an assignment wants somebody designated',
    file: `${authority}/judge-assignment.ts`,
    from: 'designatedTrainers(authority, assignment, work, day).length > 0',
    to: 'designatedTrainers(authority, assignment, work, day).length >= 0',
  },
  {
    rule: 'two cards never add up',
    file: `${authority}/judge-day.ts`,
    from: 'for (const route of routes) route.rank = worse(personal.rank, route.rank)',
    to: 'for (const route of routes) route.rank = personal.rank',
  },
  {
    rule: 'an unrated item is unknown',
    file: `${authority}/judge-card.ts`,
    from: "if (complexity === 'not-rated' && edition.givesAnything(grant)) {",
    to: "if (complexity === 'not-rated' && !edition.givesAnything(grant)) {",
  },
  {
    rule: 'an end on the 3,660th day is told',
    file: `${authority}/outlook.ts`,
    from: 'const horizon = first + HORIZON_DAYS',
    to: 'const horizon = first + HORIZON_DAYS - 1',
  },
  {
    rule: 'a trainer is designated high enough',
    file: `${authority}/company.ts`,
    from: 'rank >= least.rank',
    to: 'rank >= 0',
  },
  {
    rule: 'over the days of an answer the strictest of what a finding allows stands',
    file: `${authority}/finding-order.ts`,
    from: 'const stricter = rankOf(right.allows) < rankOf(left.allows) ? right : left',
    to: 'const stricter = left',
  },
  {
    rule: 'short are the cuts that supervisors may watch, not the supervisors',
    file: `${authority}/company.ts`,
    from: 'places: deficient.supervisors.length * capacity',
    to: 'places: deficient.supervisors.length',
  },
  {
    rule: 'nothing is renewed before today',
    file: `${authority}/possible-changes.ts`,
    from: 'return piece.first < today',
    to: 'return piece.last < today',
  },
]
