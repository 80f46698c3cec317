import type { CalendarDate } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { Book, Confirmation, Edition, Level } from './books.schema.ts'
import { isConfirmed } from './confirmations.ts'
import { figuresOf, type RuleFigure } from './rule-figures.ts'
import type { Rule, RuleKind } from './rules.schema.ts'
import { MARKS, type Mark } from './words.ts'

/** The sections of a book in the order in which they are read. */
const BOOK_SECTIONS = [
  'grants',
  'cards',
  'supervision',
  'people',
  'certificates',
  'complexity',
  'worksheet',
  'evaluation',
  'cuts',
  'courses',
  'cautions',
] as const

/** The subject of a section of a book. */
export type BookSection = (typeof BOOK_SECTIONS)[number]

/** A rule as a reader sees it: what it says, where from, how well supported, and its figures. */
export type BookRule = {
  id: string
  kind: RuleKind
  says: string
  source: string
  mark: Mark
  disagrees?: string
  /** Of a rule from memory: whether somebody has confirmed it. */
  confirmed?: boolean
  figures: readonly RuleFigure[]
}

/** One edition to be read. */
export type EditionPage = {
  id: string
  name: string
  says: string
  firstDay: CalendarDate
  lastDay?: CalendarDate
  successor?: { name: string; day: CalendarDate }
  /** Highest rank last. */
  levels: readonly Level[]
  /** How many rules carry each mark. */
  marks: Readonly<Record<Mark, number>>
  sections: readonly { section: BookSection; rules: readonly BookRule[] }[]
}

/** A book to be read: data for a page or a text, without sentences of its own. */
export type BookPage = { id: string; name: string; says: string; editions: readonly EditionPage[] }

/** Sets out a book: its editions by their days, their rules by section, in the order of the book. */
export function bookPage(
  book: Pick<Book, 'id' | 'name' | 'says'>,
  editions: readonly Omit<Edition, 'recordedIn'>[],
  confirmations: readonly Pick<Confirmation, 'edition' | 'rule'>[],
): BookPage {
  return {
    id: book.id,
    name: book.name,
    says: book.says,
    editions: editions
      .filter((edition) => edition.book === book.id)
      .sort((left, right) => byText(left.firstDay, right.firstDay) || byText(left.id, right.id))
      .map((edition) => editionPage(edition, confirmations)),
  }
}

function editionPage(
  edition: Omit<Edition, 'recordedIn'>,
  confirmations: readonly Pick<Confirmation, 'edition' | 'rule'>[],
): EditionPage {
  const bookRule = (rule: Rule): BookRule => ({
    id: rule.id,
    kind: rule.kind,
    says: rule.says,
    source: rule.source,
    mark: rule.mark,
    ...(rule.disagrees === undefined ? {} : { disagrees: rule.disagrees }),
    ...(rule.mark === 'from-memory' ? { confirmed: isConfirmed(edition, rule, confirmations) } : {}),
    figures: figuresOf(rule),
  })
  return {
    id: edition.id,
    name: edition.name,
    says: edition.says,
    firstDay: edition.firstDay,
    ...(edition.lastDay === undefined ? {} : { lastDay: edition.lastDay }),
    ...(edition.successor === undefined ? {} : { successor: edition.successor }),
    levels: [...edition.levels].sort((left, right) => left.rank - right.rank),
    marks: countMarks(edition.rules),
    sections: BOOK_SECTIONS.map((section) => ({
      section,
      rules: edition.rules.filter((rule) => SECTION_OF[rule.kind] === section).map(bookRule),
    })).filter(({ rules }) => rules.length > 0),
  }
}

function countMarks(rules: readonly Rule[]): Record<Mark, number> {
  const counts = Object.fromEntries(MARKS.map((mark) => [mark, 0])) as Record<Mark, number>
  for (const { mark } of rules) counts[mark] += 1
  return counts
}

/** A kind of rule that no section holds does not compile. */
const SECTION_OF: Readonly<Record<RuleKind, BookSection>> = {
  grant: 'grants',
  'card.needed': 'cards',
  'card.days': 'cards',
  restriction: 'cards',
  'restriction.words': 'cards',
  suspension: 'cards',
  term: 'cards',
  recognition: 'cards',
  'card.reconciled': 'cards',
  supervision: 'supervision',
  'supervision.partner': 'supervision',
  'supervision.trainer': 'supervision',
  assignment: 'supervision',
  'age.least': 'people',
  'age.capacity': 'people',
  'capacity.outside': 'people',
  agreement: 'people',
  certificate: 'certificates',
  'certificate.delivery': 'certificates',
  'certificate.seen': 'certificates',
  'complexity.rated': 'complexity',
  'complexity.provisional': 'complexity',
  'worksheet.factor': 'worksheet',
  'worksheet.stacking': 'worksheet',
  evaluator: 'evaluation',
  decider: 'evaluation',
  'course.size': 'courses',
  'course.field-days': 'courses',
  'course.field-groups': 'courses',
  'course.module': 'courses',
  'course.prerequisite': 'courses',
  'course.share': 'courses',
  'training-record': 'courses',
  'training-record.kept': 'courses',
  'cautions.shown': 'cautions',
  'cut.share': 'cuts',
  'cut.angle': 'cuts',
  'cut.back-cut': 'cuts',
  'cut.length': 'cuts',
  'log.order': 'cuts',
  'log.offset': 'cuts',
  'log.wedges': 'cuts',
}
