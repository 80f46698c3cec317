import { expect } from 'vitest'
import type { Answer, Finding } from '../../../lib/core/authority/answer.ts'
import { ask } from '../../../lib/core/authority/ask.ts'
import { openRecords } from '../../../lib/core/authority/authority-index.ts'
import type { Question } from '../../../lib/core/authority/question.ts'
import type { Records } from '../../../lib/core/authority/records.ts'
import { byText } from '../../../lib/core/kernel/order.ts'
import type { Standing } from '../../../lib/core/rulebooks/standing.ts'
import { records, type Part } from '../../builders/records.ts'
import { question, work, type WorkSaid } from '../../builders/work.ts'

/** One case: facts and a question about `p-1` (on 8 July 2027, if no day is given), and what the answer must say. */
export type Row = {
  name: string
  facts: readonly Part[]
  work?: WorkSaid
  first?: string
  last?: string
  /** Over the whole span. */
  standing: Standing
  /** Runs of days as `standing first last`; one run, if unsaid. */
  spans?: readonly string[]
  /** All findings of the span as `toldOf` writes them. */
  findings: readonly string[]
}

/** The answer about one person. */
export function answerAbout(facts: Records, asked: Question, id = 'p-1'): Answer {
  const [answer] = ask(openRecords(facts), { ...asked, persons: [id] }).answers
  if (answer === undefined) throw new Error(`no answer about ${id}`)
  return answer
}

/** The answer to a case. */
export function answerTo(row: Pick<Row, 'facts' | 'work' | 'first' | 'last'>): Answer {
  const { facts, first = '2027-07-08', last = first } = row
  return answerAbout(records(...facts), question(work(row.work), first, last))
}

/** Asserts the standing, the runs of days where the case has them, and every finding with its figures and rule. */
export function expectRow(row: Row): void {
  const answer = answerTo(row)
  expect(toldOf(answer)).toEqual([...row.findings].sort(byText))
  expect(answer.standing).toBe(row.standing)
  expect(row.spans === undefined ? answer.spans.length : spansOf(answer)).toEqual(row.spans ?? 1)
}

/** The findings of an answer, each as `kind figure=value | rule | allows`, sorted. */
export function toldOf(answer: { findings: readonly Finding[] }): string[] {
  return answer.findings.map(toldOfOne).sort(byText)
}

/** One finding as a line; figures in the order of their names. */
export function toldOfOne(finding: Finding): string {
  const { kind, rule, records: _records, allows, ...figures } = finding
  return `${[kind, ...figuresOf(figures)].join(' ')} | ${rule?.rule ?? 'no rule'} | ${allows}`
}

/** The runs of days of an answer, each as `standing first last`. */
export function spansOf(answer: Answer): string[] {
  return answer.spans.map(({ standing, first, last }) => `${standing} ${first} ${last}`)
}

/** The notes of an answer but for `successor-not-held`, each as `kind figure=value | rule | first/last ...`, sorted. */
export function notesOf(answer: Answer): string[] {
  return answer.notes
    .filter((note) => note.kind !== 'successor-not-held')
    .map(({ kind, rule, records: _records, days, ...figures }) => {
      const spans = days.map(({ first, last }) => `${first}/${last}`).join(' ')
      return `${[kind, ...figuresOf(figures)].join(' ')} | ${rule?.rule ?? 'no rule'} | ${spans}`
    })
    .sort(byText)
}

function figuresOf(figures: Readonly<Record<string, unknown>>): string[] {
  return Object.entries(figures)
    .sort(([left], [right]) => byText(left, right))
    .map(([name, value]) => `${name}=${Array.isArray(value) ? value.join('+') : String(value)}`)
}
