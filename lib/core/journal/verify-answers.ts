import type { EntryBodies } from './entry-bodies.ts'
import { answerKeptBy } from './entry-body.schema.ts'
import type { JournalFinding } from './findings.ts'

/**
 * An answer that was kept. `digest` is the one that stands beside it, `digestOfRow` what its columns make now, `n` the
 * entry as known at which it was given.
 */
export type AnswerRow = { id: string; n: number; digest: string; digestOfRow: string }

/**
 * Compares kept answers with the entries that say they were kept. An answer does not name its entry, which is later
 * than the one it was given at: that none names it is told only where all of those are known. `last` is the number of
 * the last entry there is.
 */
export function verifyAnswers(
  bodies: EntryBodies,
  last: number,
  answers: readonly AnswerRow[],
): readonly JournalFinding[] {
  const findings: JournalFinding[] = []
  const rows = new Map(answers.map((answer) => [answer.id, answer]))
  const named = new Set<string>()
  for (const [n, body] of bodies) {
    const kept = answerKeptBy(body)
    if (kept === undefined) continue
    named.add(kept.id)
    const row = rows.get(kept.id)
    if (row === undefined) findings.push({ kind: 'answer-missing', n, id: kept.id })
    else if (row.digestOfRow !== kept.digest || row.digest !== kept.digest)
      findings.push({ kind: 'answer-altered', n, id: kept.id })
  }
  let lastUnknown = last
  while (bodies.has(lastUnknown)) lastUnknown -= 1
  for (const { id, n } of answers)
    if (!named.has(id) && n >= lastUnknown) findings.push({ kind: 'answer-unnamed', id })
  return findings
}
