import { expect } from 'vitest'
import { askBriefly, openRecords } from '../../lib/core/authority/ask.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { plainAnswer } from '../plain/answer.ts'
import { canonicalAnswer } from './canonical.ts'

/** The answer about one person, which must be that of the plain version too. */
export function bothAnswer(of: Records, asked: Question, who = 'p-1') {
  const [answer] = askBriefly(openRecords(of), { ...asked, persons: [who] })
  if (answer === undefined) throw new Error(`${who} is not on record`)
  expect(canonicalAnswer(answer)).toEqual(canonicalAnswer(plainAnswer(of, asked, who)))
  return answer
}

/** The kinds of some findings, sorted. */
export function kindsOf(findings: readonly { kind: string }[]): string[] {
  return findings.map(({ kind }) => kind).sort()
}
