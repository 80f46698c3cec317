import type { Answer } from '../../lib/core/authority/answer.ts'
import type { Authority } from '../../lib/core/authority/authority-index.ts'
import { openMatrix, type MatrixItem } from '../../lib/core/authority/matrix.ts'

/** An answer without remedies. */
export type AnswerBody = Omit<Answer, 'remedies'>

/**
 * The whole answer about some people and every item, from opened records: a fresh matrix each time, every answer kept.
 * A person's answers stand together.
 */
export function ourAnswers(
  authority: Authority,
  items: readonly MatrixItem[],
  people: readonly number[],
): AnswerBody[] {
  const matrix = openMatrix(authority, items)
  return people.flatMap((person) => matrix.answersOf(person))
}

/** What is in some answers, so that nobody can leave it out unseen. */
export function contentsOf(answers: readonly AnswerBody[]): Record<string, number> {
  let [spans, findings, notes, ends] = [0, 0, 0, 0]
  for (const answer of answers) {
    spans += answer.spans.length
    findings += answer.findings.length
    notes += answer.notes.length
    if (answer.holdsThrough !== 'open') ends += 1
  }
  return { spans, findings, notes, ends }
}
