import type { Finding } from '../../lib/core/authority/answer.ts'
import type { Edition } from '../../lib/core/rulebooks/books.schema.ts'
import type { Asked } from './asked.ts'
import { grantsFor, rankOfComplexity, ruleOf, rulesOf, supervisorLevel, type Planned } from './books-day.ts'
import { namesWork, recognisedLevel } from './card-day.ts'
import { stateOn } from './card-days.ts'
import { isCovered } from './days.ts'
import { compareTexts, findingOf } from './findings.ts'
import { restrictionFindings } from './restrictions-day.ts'

/** Training under an assignment on a day: what stands against more, and who may train. */
export type AssignmentDay = { findings: Finding[]; trainers: string[] }

/** What an assignment gives somebody without a card in force for the work; nothing where none covers the question. */
export function assignmentOnDay(
  asked: Asked,
  edition: Edition,
  day: number,
  complexity: Planned,
): AssignmentDay | undefined {
  const { work } = asked
  const rule = rulesOf(edition, 'assignment')[0]
  if (rule === undefined || work.item === undefined || !rule.workKinds.includes(work.workKind))
    return undefined
  if (complexity !== 'not-rated' && rankOfComplexity(complexity) > rankOfComplexity(rule.upTo))
    return undefined
  // A book that grants nothing for the work gives nobody anything.
  if (grantsFor(edition, work).length === 0 || isBarredByCard(asked, edition, day)) return undefined
  const { item } = work
  const covering = asked.assignments.filter(
    (one) =>
      one.items.includes(item) &&
      isCovered(day, one.firstDay, one.lastDay) &&
      one.trainers.some((trainer) => trainer !== one.person && isDesignated(asked, trainer, day)),
  )
  if (covering.length === 0) return undefined
  const ids = covering.map((one) => one.id)
  const supervisor = supervisorLevel(edition, work, complexity)
  const named = [
    ...new Set(
      covering.flatMap((one) =>
        one.trainers.filter((id) => id !== one.person && isDesignated(asked, id, day)),
      ),
    ),
  ]
  const trainingOnly = {
    kind: 'training-only',
    ...(supervisor === undefined ? {} : { supervisor }),
    trainers: named.sort(compareTexts),
  } as const
  const findings = [
    withoutLastDay(asked, edition, day) ?? noCard(asked, edition, 'training'),
    findingOf(edition, rule, 'training', ids, trainingOnly),
    ...restrictionsOfCards(asked, edition, day, complexity),
  ]
  if (complexity === 'not-rated') {
    const rated = ruleOf(edition, 'complexity.rated')
    findings.push(findingOf(edition, rated, 'unknown', [item], { kind: 'complexity-unrated' }))
  }
  return { findings, trainers: covering.flatMap((one) => one.trainers) }
}

/** That no card names the work. */
export function noCard(asked: Asked, edition: Edition, allows: 'none' | 'training'): Finding {
  const { workKind, sawKind } = asked.work
  const rule = ruleOf(edition, 'card.needed')
  return findingOf(edition, rule, allows, [asked.id], { kind: 'no-card', workKind, sawKind })
}

/** That the last day of a card which names the work is not on record. */
function withoutLastDay(asked: Asked, edition: Edition, day: number): Finding | undefined {
  const ids = asked.cards
    .filter(
      (read) =>
        namesWork(asked, read) &&
        stateOn(read, day) === 'no-last-day' &&
        recognisedLevel(asked, edition, read) !== undefined,
    )
    .map((read) => read.card.id)
  if (ids.length === 0) return undefined
  const figures = { kind: 'not-on-record', what: 'last-day' } as const
  return findingOf(edition, ruleOf(edition, 'card.days'), 'training', ids, figures)
}

/** Whether a card in force on the day names the work and is recognised. */
function isBarredByCard(asked: Asked, edition: Edition, day: number): boolean {
  return asked.cards.some(
    (read) =>
      namesWork(asked, read) &&
      stateOn(read, day) === 'in-force' &&
      recognisedLevel(asked, edition, read) !== undefined,
  )
}

function isDesignated(asked: Asked, trainer: string, day: number): boolean {
  return asked.records.designations.some(
    (one) =>
      one.person === trainer &&
      one.workKinds.includes(asked.work.workKind) &&
      one.sawKind === asked.work.sawKind &&
      isCovered(day, one.firstDay, one.lastDay),
  )
}

/** The restrictions of every card within its days, whatever it names. That somebody watches is said already. */
function restrictionsOfCards(asked: Asked, edition: Edition, day: number, complexity: Planned): Finding[] {
  return asked.cards
    .filter((read) => ['in-force', 'no-last-day'].includes(stateOn(read, day)))
    .flatMap((read) => restrictionFindings(asked, edition, read, complexity))
    .filter((finding) => finding.kind !== 'needs-supervisor')
}
