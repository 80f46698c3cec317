import { expect } from 'vitest'
import type { FindingKind } from '../../lib/core/authority/answer.ts'
import { ask } from '../../lib/core/authority/ask.ts'
import { openRecords } from '../../lib/core/authority/authority-index.ts'
import { byText } from '../../lib/core/kernel/order.ts'
import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import { records, type Part } from '../builders/records.ts'
import { question, work, type WorkSaid } from '../builders/work.ts'

/** One published (or remembered) fact as a question about `p-1` under the shipped books, and what it must answer. */
export type AuthorityRow = {
  /** The outside source; "from memory" and "common practice, no source" are said in it. */
  source: string
  fact: string
  facts: readonly Part[]
  work?: WorkSaid
  /** The day asked; 8 July 2027, if unsaid. */
  day?: string
  standing: Standing
  /** The kinds of all findings. */
  findings: readonly FindingKind[]
}

/** Asks a row and asserts the standing and every kind of finding. */
export function expectPublished(row: AuthorityRow): void {
  const asked = question(work(row.work), row.day ?? '2027-07-08', row.day, { persons: ['p-1'] })
  const [answer] = ask(openRecords(records(...row.facts)), asked).answers
  expect(answer?.standing).toBe(row.standing)
  const kinds = answer?.findings.map(({ kind }) => kind) ?? []
  expect([...kinds].sort(byText)).toEqual([...row.findings].sort(byText))
}

/** Whom of a company somebody may have as a supervisor that day, and whether everybody is served. */
export function supervisorsOf(
  facts: readonly Part[],
  company: readonly string[],
  said: WorkSaid = {},
): { may: Record<string, readonly string[]>; feasible: boolean } {
  const asked = question(work(said), '2027-07-08', '2027-07-08', {
    company: company.map((person) => ({ person })),
  })
  const [day] = ask(openRecords(records(...facts)), asked).company ?? []
  const may = Object.fromEntries((day?.learners ?? []).map((learner) => [learner.person, learner.may]))
  return { may, feasible: day?.feasible ?? false }
}
