import type { Sections } from '../../lib/core/authority/records.ts'
import { plusDays } from '../../lib/core/calendar/dates.ts'
import type { Confirmation, Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Rule } from '../../lib/core/rulebooks/rules.schema.ts'
import { GIVES, MARKS, SAW_KINDS, WORK_KINDS, type WorkKind } from '../../lib/core/rulebooks/words.ts'
import { shippedBooks, type BookFacts } from '../builders/shipped-books.ts'
import type { Calendar, Draw } from './draw.ts'

/** The rule books of a generated program. */
export type GeneratedBooks = { [Name in keyof BookFacts]: BookFacts[Name][] } & {
  confirmations: Confirmation[]
  /** The book that governs where no place names one. */
  book: string
}

/** What a card may name: every book of a generated program. */
export const BOOKS = ['federal-crosscut', 'home', 'cooperator-crosscut', 'interagency-faller'] as const

/**
 * The shipped books, the federal one sometimes in two editions of which the later renames a level, and a home book
 * that has two editions, rules of its own and sometimes a gap.
 */
export function generateBooks(draw: Draw, calendar: Calendar): GeneratedBooks {
  const shipped = shippedBooks()
  const federal = shipped.editions.find((edition) => edition.book === 'federal-crosscut')
  if (federal === undefined) throw new Error('the federal book does not ship')
  const others = shipped.editions.filter((edition) => edition !== federal)
  const editions = [
    ...others,
    ...(draw.amiss(60) ? inTwoEditions(draw, calendar, federal, 'federal-crosscut') : [federal]),
    ...inTwoEditions(draw, calendar, federal, 'home'),
  ]
  return {
    books: [...shipped.books, { id: 'home', recordedIn: 1, name: 'Home', says: 'A made-up book.' }],
    editions,
    extensions: shipped.extensions,
    cautions: [],
    confirmations: confirmations(draw, calendar, editions),
    book: draw.amiss(70)
      ? draw.weighted([
          [7, 'home'],
          [2, 'cooperator-crosscut'],
          [1, 'interagency-faller'],
        ])
      : 'federal-crosscut',
  }
}

function inTwoEditions(draw: Draw, calendar: Calendar, federal: Edition, book: string): Edition[] {
  const lastDay = calendar.near()
  const gap = book === 'home' && draw.chance(50) ? 1 + draw.below(3) : 0
  const { successor, ...rest } = federal
  const first: Edition = {
    ...rest,
    id: `${book}-first`,
    book,
    firstDay: calendar.farPast(),
    lastDay,
    rules: changedRules(draw, federal.rules),
    ...(draw.chance(40) && successor !== undefined
      ? { successor: { ...successor, day: calendar.near() } }
      : {}),
  }
  const later: Edition = renamed({
    ...rest,
    id: `${book}-later`,
    book,
    firstDay: plusDays(lastDay, gap + 1),
    rules: changedRules(draw, federal.rules),
  })
  return draw.chance(20) ? [later, first] : [first, later]
}

/** The later edition calls the level B `skilled`, and knows it by its old name. Recognition names levels of today. */
function renamed(edition: Edition): Edition {
  return {
    ...edition,
    levels: edition.levels.map((level) =>
      level.level === 'B' ? { ...level, level: 'skilled', aliases: ['B'] } : level,
    ),
    rules: edition.rules.map((rule) => {
      if (rule.kind === 'grant') return { ...rule, level: newName(rule.level) }
      if (rule.kind === 'term') return { ...rule, levels: rule.levels.map(newName) }
      if (rule.kind !== 'recognition') return rule
      const books = rule.books.map((one) => ({
        ...one,
        levels: one.levels.map(({ theirs, ours }) => ({ theirs, ours: newName(ours) })),
      }))
      return { ...rule, books }
    }),
  }
}

function newName(level: string): string {
  return level === 'B' ? 'skilled' : level
}

function changedRules(draw: Draw, rules: readonly Rule[]): Rule[] {
  const withoutKind = draw.chance(6) ? draw.pick(WORK_KINDS) : undefined
  const changed: Rule[] = []
  for (const rule of rules) {
    if (isAskedOfNoAnswer(rule)) continue
    if (rule.kind === 'grant' && rule.workKind === withoutKind) continue
    if (isOptional(rule) && draw.chance(6)) continue
    changed.push(rests(draw, changedRule(draw, rule)))
  }
  if (draw.chance(25)) changed.push(anotherAge(draw), { ...anotherAge(draw), id: 'age.other-too' })
  if (draw.chance(15)) changed.push(...bloodborne(draw))
  return changed
}

/** The worksheet, the courses, the cautions and the reconciling: leaving them out keeps failing cases short. */
function isAskedOfNoAnswer({ kind }: Rule): boolean {
  const isOfOtherRoom = /^(worksheet|course|training-record)/.test(kind)
  return isOfOtherRoom || kind === 'cautions.shown' || kind === 'card.reconciled'
}

function isOptional(rule: Rule): boolean {
  const optional: Rule['kind'][] = [
    'grant',
    'age.capacity',
    'capacity.outside',
    'agreement',
    'assignment',
    'certificate',
    'certificate.delivery',
    'certificate.seen',
    'term',
  ]
  return optional.includes(rule.kind)
}

/** Where a rule says it comes from, and what disagrees with it. */
function rests(draw: Draw, rule: Rule): Rule {
  const mark = draw.chance(15) ? draw.pick(MARKS) : rule.mark
  return { ...rule, mark, ...(draw.chance(5) ? { disagrees: 'a made-up second source' } : {}) }
}

function changedRule(draw: Draw, rule: Rule): Rule {
  if (draw.chance(55)) return rule
  switch (rule.kind) {
    case 'grant': {
      const cell = draw.pick(['least', 'moderate', 'high'] as const)
      return draw.chance(20) ? { ...rule, cells: { ...rule.cells, [cell]: draw.pick(GIVES) } } : rule
    }
    case 'recognition':
      return { ...rule, books: recognised(draw) }
    case 'supervision':
      return { ...rule, cutsAtOnce: 1 + draw.below(2), ofAge: draw.pick([16, 18, 21]) }
    case 'supervision.trainer':
      return { ...rule, roles: draw.someOf(['instructor', 'evaluator']) }
    case 'assignment':
      return {
        ...rule,
        upTo: draw.pick(['least', 'moderate', 'high']),
        workKinds: draw.someOf(WORK_KINDS, 80),
      }
    case 'age.least':
      return { ...rule, years: draw.pick([14, 16, 18]) }
    case 'certificate':
      return draw.chance(40) ? { ...rule, servedBy: ['wilderness-first-aid'] } : rule
    case 'certificate.delivery':
    case 'certificate.seen':
      return draw.chance(30) ? { ...rule, subjects: [draw.pick(['first-aid', 'cpr'])] } : rule
    case 'complexity.provisional':
      return { ...rule, days: draw.pick([1, 5, 20, 180]) }
    case 'capacity.outside':
      return draw.chance(30) ? { ...rule, capacities: ['contractor', 'student'] } : rule
    case 'agreement':
      return draw.chance(30) ? { ...rule, capacities: ['employee', 'volunteer', 'not-stated'] } : rule
    case 'age.capacity':
    case 'card.days':
    case 'card.needed':
    case 'card.reconciled':
    case 'cautions.shown':
    case 'complexity.rated':
    case 'cut.angle':
    case 'cut.back-cut':
    case 'cut.length':
    case 'cut.share':
    case 'log.offset':
    case 'log.order':
    case 'log.wedges':
    case 'course.field-days':
    case 'course.field-groups':
    case 'course.module':
    case 'course.prerequisite':
    case 'course.share':
    case 'course.size':
    case 'decider':
    case 'evaluator':
    case 'restriction':
    case 'restriction.words':
    case 'supervision.partner':
    case 'suspension':
    case 'term':
    case 'training-record':
    case 'training-record.kept':
    case 'worksheet.factor':
    case 'worksheet.stacking':
      return rule
  }
}

function recognised(draw: Draw) {
  const levels: Record<string, [string, string][]> = {
    'federal-crosscut': [['A', 'A'], ['B', 'B'], ['C', 'B'], ['skilled', 'C']],
    home: [['A', 'B'], ['B', 'trainee'], ['skilled', 'B'], ['C', 'C']],
    'cooperator-crosscut': [['A', 'A'], ['B', 'A'], ['C', 'B']],
    'interagency-faller': [['basic', 'A'], ['intermediate', 'B'], ['advanced', 'C']],
  } // prettier-ignore
  return draw.someOf(Object.entries(levels), 60).map(([book, pairs]) => ({
    book,
    workKinds: draw.someOf(WORK_KINDS, 80),
    sawKinds: draw.someOf(SAW_KINDS, 80),
    levels: draw.someOf(pairs, 80).map(([theirs, ours]) => ({ theirs, ours })),
  }))
}

function anotherAge(draw: Draw): Rule {
  const workKinds: WorkKind[] = draw.someOf(WORK_KINDS, 80)
  return {
    id: 'age.other',
    kind: 'age.capacity',
    source: 'made up',
    mark: 'program-default',
    says: 'A made-up rule of age.',
    sawKind: 'crosscut',
    capacities: draw.someOf(['employee', 'volunteer', 'student', 'not-stated'], 40),
    workKinds,
    under: 18,
    gives: draw.pick(['none', 'unknown', 'supervised']),
    ...(draw.chance(50) ? { from: draw.pick([14, 16]) } : {}),
    ...(draw.chance(40) ? { guardian: draw.chance(80) } : {}),
  }
}

function bloodborne(draw: Draw): Rule[] {
  const base = { source: 'made up', mark: draw.pick(MARKS), says: 'A made-up rule.' }
  const certificate: Rule = {
    ...base,
    id: 'certificate.bloodborne',
    kind: 'certificate',
    subject: 'bloodborne',
    servedBy: ['annual-refresher'],
  }
  if (draw.chance(50)) return [certificate]
  return [
    certificate,
    {
      ...base,
      id: 'delivery.bloodborne',
      kind: 'certificate.delivery',
      subjects: ['bloodborne', 'annual-refresher'],
    },
  ]
}

function confirmations(
  draw: Draw,
  calendar: Calendar,
  editions: readonly Edition[],
): Sections['confirmations'][] {
  const rules = editions.flatMap((edition) =>
    edition.rules
      .filter((rule) => rule.mark === 'from-memory' && (rule.kind === 'grant' || rule.kind === 'age.least'))
      .map((rule) => ({ edition: edition.id, rule: rule.id })),
  )
  return draw.some(rules, 25).map((rests, index) => ({
    id: `confirmation-${index}`,
    recordedIn: 1,
    ...rests,
    by: 'Invented Manager',
    day: calendar.near(),
    read: 'A made-up text.',
  }))
}
