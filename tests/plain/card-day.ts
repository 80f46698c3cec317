import type { Finding } from '../../lib/core/authority/answer.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { RuleOf } from '../../lib/core/rulebooks/rules.schema.ts'
import type { Asked } from './asked.ts'
import { grantsFor, levelHere, ruleOf, supervisorLevel, type Planned } from './books-day.ts'
import { stateOn, type CardState, type ReadCard } from './card-days.ts'
import { dayNumber, dayText } from './days.ts'
import { findingOf } from './findings.ts'
import { restrictionFindings } from './restrictions-day.ts'

/** What one card that names the work says on one day, apart from what is asked of its holder. */
export type CardDay = {
  read: ReadCard
  state: CardState
  /** The level of the governing edition it counts as; nothing where the book does not recognise it. */
  level: string | undefined
  grant: RuleOf<'grant'> | undefined
  findings: Finding[]
}

/** Whether a card names the work kind and the saw kind; one that states no work kinds is judged as naming both. */
export function namesWork(asked: Asked, read: ReadCard): boolean {
  const { workKinds, sawKinds } = read.card
  return (
    sawKinds.includes(asked.work.sawKind) &&
    (workKinds === 'not-stated' || workKinds.includes(asked.work.workKind))
  )
}

/** The level a card counts as under an edition that grants something for the work at all. */
export function recognisedLevel(asked: Asked, edition: Edition, read: ReadCard): string | undefined {
  if (grantsFor(edition, asked.work).length === 0) return undefined
  return levelHere(edition, read.card.book, read.card.level, asked.work)
}

/** Judges a card that names the work. */
export function cardOnDay(
  asked: Asked,
  edition: Edition,
  read: ReadCard,
  day: number,
  complexity: Planned,
): CardDay {
  const { card } = read
  const state = stateOn(read, day)
  const level = recognisedLevel(asked, edition, read)
  const findings = dayFindings(edition, read, state)
  if (card.workKinds === 'not-stated' && asked.work.workKind === 'felling') {
    const rule = ruleOf(edition, 'card.needed')
    findings.push(
      findingOf(edition, rule, 'unknown', [card.id], { kind: 'not-on-record', what: 'work-kinds' }),
    )
  }
  if (level === undefined) {
    const figures = { kind: 'book-does-not-recognise', book: card.book, level: card.level } as const
    findings.push(findingOf(edition, ruleOf(edition, 'recognition'), 'none', [card.id], figures))
    return { read, state, level, grant: undefined, findings }
  }
  const grant = grantsFor(edition, asked.work).find((rule) => rule.level === level)
  const ofLevel = levelFindings(asked, edition, card.id, level, grant, complexity)
  const ofRestrictions = restrictionFindings(asked, edition, read, complexity)
  findings.push(...ofLevel, ...withoutRepeatedSupervisor(ofLevel, ofRestrictions))
  return { read, state, level, grant, findings }
}

/** Whether something says already that the work is done under somebody's eye. */
function saysSupervised(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.kind === 'needs-supervisor' || finding.kind === 'training-only')
}

/** Findings to be added to earlier ones: a need of a supervisor that was said already is left out. */
export function withoutRepeatedSupervisor(earlier: readonly Finding[], more: readonly Finding[]): Finding[] {
  return saysSupervised(earlier) ? more.filter((finding) => finding.kind !== 'needs-supervisor') : [...more]
}

function levelFindings(
  asked: Asked,
  edition: Edition,
  card: string,
  level: string,
  grant: RuleOf<'grant'> | undefined,
  complexity: Planned,
): Finding[] {
  const tooLow = { kind: 'level-too-low', level, complexity } as const
  if (grant === undefined) return [findingOf(edition, ruleOf(edition, 'card.needed'), 'none', [card], tooLow)]
  if (complexity === 'not-rated') {
    const { least, moderate, high } = grant.cells
    const givesAnything = [least, moderate, high].some((cell) => cell !== 'none')
    if (!givesAnything) return [findingOf(edition, grant, 'none', [card], tooLow)]
    const rule = ruleOf(edition, 'complexity.rated')
    return [findingOf(edition, rule, 'unknown', [card], { kind: 'complexity-unrated' })]
  }
  const supervisor = supervisorLevel(edition, asked.work, complexity)
  const named = supervisor === undefined ? {} : { supervisor }
  switch (grant.cells[complexity]) {
    case 'independent':
      return []
    case 'own-level':
      return [findingOf(edition, grant, 'own-level', [card], { kind: 'needs-supervisor', ...named })]
    case 'training':
      return [findingOf(edition, grant, 'training', [card], { kind: 'training-only', level, ...named })]
    case 'none':
      return [findingOf(edition, grant, 'none', [card], tooLow)]
  }
}

function dayFindings(edition: Edition, read: ReadCard, state: CardState): Finding[] {
  const rule = ruleOf(edition, 'card.days')
  const records = [read.card.id]
  switch (state) {
    case 'in-force':
      return []
    case 'no-last-day':
      return [findingOf(edition, rule, 'unknown', records, { kind: 'not-on-record', what: 'last-day' })]
    case 'not-yet': {
      const figures = { kind: 'card-not-yet-valid', firstDay: read.card.effectiveDay } as const
      return [findingOf(edition, rule, 'none', records, figures)]
    }
    case 'ended': {
      const { ending, last } = read
      const isStopped = ending !== undefined && (last === undefined || dayNumber(ending.firstDay) <= last)
      const figures = {
        kind: 'card-no-longer-valid',
        lastDay: dayText(read.until),
        ...(isStopped ? { ended: ending.kind } : {}),
      } as const
      return [findingOf(edition, rule, 'none', records, figures)]
    }
  }
}
