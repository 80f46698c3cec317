import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Inches } from '../../lib/core/kernel/measures.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Work } from '../../lib/core/authority/answer.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Card, Restriction } from '../../lib/core/cards/cards.schema.ts'
import type { Certificate, Membership, Person } from '../../lib/core/people/people.schema.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Rule } from '../../lib/core/rulebooks/rules.schema.ts'
import type { Gives, WorkKind } from '../../lib/core/rulebooks/words.ts'

/** A day written in a test. */
export const day = (text: string): CalendarDate => text as CalendarDate
/** A length written in a test. */
export const inches = (value: number): Inches => value as Inches

const said = { source: 'made up', mark: 'published', says: 'made up for a test' } as const

function grant(workKind: WorkKind, level: string, least: Gives, moderate: Gives, high: Gives): Rule {
  const cells = { least, moderate, high }
  return {
    ...said,
    id: `grant.${workKind}.${level}`,
    kind: 'grant',
    level,
    workKind,
    sawKind: 'crosscut',
    cells,
  }
}

const bothKinds: Rule[] = (['bucking', 'felling'] as const).flatMap((workKind) => [
  grant(workKind, 'A', 'own-level', 'training', 'none'),
  grant(workKind, 'B', 'independent', 'independent', 'training'),
  grant(workKind, 'C', 'independent', 'independent', 'independent'),
])

const crosscut = { sawKind: 'crosscut' } as const
const minor = { ...said, ...crosscut, kind: 'age.capacity', under: 18 } as const
const rules: Rule[] = [
  ...bothKinds,
  { ...said, id: 'age.least', kind: 'age.least', ...crosscut, years: 16 },
  { ...minor, id: 'age.hired', capacities: ['employee'], workKinds: ['bucking', 'felling'], gives: 'none' },
  {
    ...minor,
    id: 'age.volunteer.bucking',
    capacities: ['volunteer'],
    workKinds: ['bucking'],
    from: 16,
    gives: 'supervised',
    guardian: true,
  },
  { ...minor, id: 'age.volunteer.felling', capacities: ['volunteer'], workKinds: ['felling'], gives: 'none' },
  { ...said, id: 'agreement', kind: 'agreement', capacities: ['volunteer'] },
  { ...said, id: 'certificate.first-aid', kind: 'certificate', subject: 'first-aid' },
  { ...said, id: 'certificate.cpr', kind: 'certificate', subject: 'cpr' },
  { ...said, id: 'delivery', kind: 'certificate.delivery', subjects: ['cpr'] },
  { ...said, id: 'seen', kind: 'certificate.seen', subjects: ['cpr', 'first-aid'] },
  { ...said, id: 'assignment', kind: 'assignment', workKinds: ['bucking', 'felling'], upTo: 'least' },
  { ...said, id: 'card', kind: 'card.needed' },
  { ...said, id: 'days', kind: 'card.days' },
  { ...said, id: 'restriction', kind: 'restriction' },
  { ...said, id: 'words', kind: 'restriction.words' },
  { ...said, id: 'suspension', kind: 'suspension' },
  { ...said, id: 'recognition', kind: 'recognition', books: [] },
  { ...said, id: 'supervision', kind: 'supervision', cutsAtOnce: 1, ofAge: 18 },
  { ...said, id: 'trainer', kind: 'supervision.trainer', roles: ['instructor', 'evaluator'] },
  { ...said, id: 'rated', kind: 'complexity.rated' },
  { ...said, id: 'provisional', kind: 'complexity.provisional', days: 180 },
]

/** One open-ended edition of one book. */
const edition: Edition = {
  id: 'federal-2016',
  recordedIn: 1,
  book: 'federal',
  name: 'A book made up for tests',
  says: 'made up for a test',
  firstDay: day('2016-07-19'),
  levels: ['A', 'B', 'C'].map((level, rank) => ({ level, rank, name: level })),
  rules,
}

/** A program that knows only its book, and what a test adds. */
export function recordsWith(facts: Partial<Records>): Records {
  return {
    timeZone: 'America/Denver',
    book: 'federal',
    knownAt: 100,
    books: [],
    editions: [edition],
    confirmations: [],
    organisations: [],
    people: [],
    memberships: [],
    permissions: [],
    certificates: [],
    designations: [],
    assignments: [],
    cards: [],
    endings: [],
    resolutions: [],
    extensions: [],
    suspensions: [],
    lifts: [],
    places: [],
    items: [],
    expectedWork: [],
    ratings: [],
    raises: [],
    hitches: [],
    placements: [],
    disputes: [],
    joins: [],
    cautions: [],
    ...facts,
  }
}

/** An adult, or whoever is born on the day given. */
export const person = (id: string, birthDate = '1990-01-01'): Person => ({
  id,
  recordedIn: 1,
  name: id,
  birthDate: day(birthDate),
})

/** A membership with the days of its agreement. */
export const member = (who: string, capacity: Membership['capacity'], lastDay?: string): Membership => ({
  id: `membership-${who}`,
  recordedIn: 1,
  person: who,
  organisation: 'agency',
  capacity,
  ...(lastDay === undefined ? {} : { lastDay: day(lastDay) }),
})

/** A seen certificate given in person. */
export const certificate = (who: string, subject: string, first: string, last: string): Certificate => ({
  id: `${subject}-${who}-${first}`,
  recordedIn: 1,
  person: who,
  subject,
  delivery: 'in-person',
  firstDay: day(first),
  lastDay: day(last),
  seen: true,
})

/** First aid and CPR for years. */
export const firstAider = (who: string): Certificate[] =>
  ['first-aid', 'cpr'].map((subject) => certificate(who, subject, '2014-01-01', '2035-12-31'))

/** A card of the book for bucking, or for the kinds given. */
export function card(
  who: string,
  level: string,
  first = '2025-04-14',
  last = '2028-04-13',
  more: { workKinds?: WorkKind[]; restrictions?: Restriction[] } = {},
): Card {
  return {
    id: `card-${who}-${first}`,
    recordedIn: 1,
    number: `number-${who}-${first}`,
    line: 1,
    person: who,
    book: 'federal',
    workKinds: more.workKinds ?? ['bucking'],
    sawKinds: ['crosscut'],
    level,
    effectiveDay: day(first),
    lastDay: day(last),
    restrictions: more.restrictions ?? [],
  }
}

/** A question about bucking a log of 20 inches, or about what is given. */
export function question(first: string, last: string, work: Partial<Work> = {}): Question {
  return {
    work: { workKind: 'bucking', sawKind: 'crosscut', diameter: inches(20), ...work },
    first: day(first),
    last: day(last),
    today: day('2027-05-03'),
  }
}
