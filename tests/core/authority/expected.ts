import { expect } from 'vitest'
import type { Answer, CompanyDays, FindingKind } from '../../../lib/core/authority/answer.ts'
import { ask, openRecords } from '../../../lib/core/authority/ask.ts'
import type { Question } from '../../../lib/core/authority/question.ts'
import type { Records } from '../../../lib/core/authority/records.ts'
import type { Standing } from '../../../lib/core/rulebooks/standing.ts'
import { byText } from '../../../lib/core/kernel/order.ts'

/** A finding that an answer must hold, with the figures that matter. */
type ExpectedFinding = { kind: FindingKind; [figure: string]: unknown }

/** What an answer must say. `findings` is the exact set of the span. */
export type Expected = {
  standing: Standing
  /** Standing by runs of days; one run over the whole question, if unsaid. */
  days?: readonly (readonly [Standing, string, string])[]
  findings: readonly (FindingKind | ExpectedFinding)[]
  holdsThrough: string
  endedBy?: { day: string; standing: Standing; came?: readonly FindingKind[]; went?: readonly FindingKind[] }
}

/** The answer about one person. */
export function answerAbout(records: Records, question: Question, person = 'p-1'): Answer {
  const { answers } = ask(openRecords(records), { ...question, persons: [person] })
  const answer = answers.find((one) => one.person === person)
  if (answer === undefined) throw new Error(`no answer about ${person}`)
  return answer
}

/** The company of a question. */
export function companyOf(records: Records, question: Question): readonly CompanyDays[] {
  return ask(openRecords(records), question).company ?? []
}

/** Asserts standing by days, the exact findings with their figures, and how long the first day's standing holds. */
export function expectAnswer(answer: Answer, question: Question, expected: Expected): void {
  const days = expected.days ?? [[expected.standing, question.first, question.last] as const]
  expect(answer.standing).toBe(expected.standing)
  expect(standingByDays(answer)).toEqual(days)
  const findings = expected.findings.map((one) => (typeof one === 'string' ? { kind: one } : one))
  expect(sortedByKind(answer.findings)).toMatchObject(sortedByKind(findings))
  expect(answer.holdsThrough).toBe(expected.holdsThrough)
  if (expected.holdsThrough === 'open') expect(answer.endedBy).toBeUndefined()
  if (expected.endedBy === undefined) return
  const { day, standing, came, went } = expected.endedBy
  expect(answer.endedBy).toMatchObject({ day, standing })
  if (came !== undefined)
    expect(answer.endedBy?.came.map(kindOf).sort(byText)).toEqual([...came].sort(byText))
  if (went !== undefined)
    expect(answer.endedBy?.went.map(kindOf).sort(byText)).toEqual([...went].sort(byText))
}

/** The days of the notes of one kind, as `first/last`. */
export function daysOfNote(answer: Answer, kind: Answer['notes'][number]['kind']): string[] {
  return answer.notes
    .filter((note) => note.kind === kind)
    .flatMap((note) => note.days.map(({ first, last }) => `${first}/${last}`))
}

function standingByDays(answer: Answer): (readonly [Standing, string, string])[] {
  const runs: [Standing, string, string][] = []
  for (const { standing, first, last } of answer.spans) {
    const open = runs.at(-1)
    if (open?.[0] === standing) open[2] = last
    else runs.push([standing, first, last])
  }
  return runs
}

function sortedByKind<Finding extends { kind: FindingKind }>(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((left, right) => byText(left.kind, right.kind))
}

function kindOf(finding: { kind: FindingKind }): FindingKind {
  return finding.kind
}
