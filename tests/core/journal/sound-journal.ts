import { createHash } from 'node:crypto'
import { canonicalJson, type JsonValue } from '../../../lib/core/kernel/canonical-json.ts'
import { answerDigest, entryHash, factDigest, type EntryRow } from '../../../lib/core/journal/entry.ts'
import type { AnswerRow } from '../../../lib/core/journal/verify-answers.ts'
import type { FactRow } from '../../../lib/core/journal/verify-facts.ts'
import type { RecordRow } from '../../../lib/core/journal/verify-records.ts'

/** SHA-256 of Node, as the core wants it. */
export function sha256(...parts: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(part)
  return hash.digest('hex')
}

/** What an entry of the example records and closes, facts by their numbers, and the answer that it keeps. */
type Step = {
  event: string
  records?: readonly string[]
  closes?: readonly string[]
  keeps?: string
  erases?: readonly string[]
}

/** Five entries: two people, a card, a correction of the card, one without any fact that keeps an answer, and a correction. */
export const STEPS: readonly Step[] = [
  { event: 'program-founded', records: ['person_fact 1', 'person_fact 2'] },
  { event: 'card-issued', records: ['card_fact 3'] },
  { event: 'card-corrected', records: ['card_fact 4'], closes: ['card_fact 3'] },
  { event: 'answer-kept', keeps: 'a' },
  { event: 'person-corrected', records: ['person_fact 5'], closes: ['person_fact 1'] },
]

export type Journal = { entries: EntryRow[]; facts: FactRow[]; records: RecordRow[]; answers: AnswerRow[] }

/** A journal as it is written: built forwards, each entry over the hash of the one before. Fresh at each call. */
export function soundJournal(steps = STEPS): Journal {
  const entries: EntryRow[] = []
  const facts: FactRow[] = []
  const answers: AnswerRow[] = []
  for (const [index, { event, records = [], closes = [], keeps, erases }] of steps.entries()) {
    const n = index + 1
    const made = records.map((name) => factOf(name, n))
    facts.push(...made)
    for (const fact of facts) if (closes.includes(`${fact.table} ${fact.id}`)) fact.supersededIn = n
    const kept = keeps === undefined ? undefined : answerOf(keeps, n - 1)
    if (kept !== undefined) answers.push(kept)
    const blanked = facts.filter(({ table, id }) => erases?.includes(`${table} ${id}`))
    for (const fact of blanked) {
      fact.row = { ...fact.row, first_day: null, erased_in: n }
      fact.salt = sha256(fact.salt).slice(0, 32)
    }
    const body = canonicalJson({
      about: [`about-${n}`],
      facts: digestsOf(made),
      closed: closes.map((name) => namesOf(name)),
      ...(erases === undefined ? {} : { erased: digestsOf(blanked) }),
      outcome: { kind: 'done' },
      ...(kept === undefined ? {} : { said: { answer: { id: kept.id, digest: kept.digest } } }),
    })
    const content = {
      n,
      at: `2027-05-0${n}T10:00:00.000Z`,
      statedAt: n === 2 ? '2026-01-01T00:00:00.000Z' : null,
      command: n === 3 ? '00000000-0000-4000-8000-000000000003' : null,
      actor: n === 1 ? null : '00000000-0000-4000-8000-00000000000a',
      event,
      v: 1,
      body,
    }
    const prev = entries.at(-1)?.hash ?? null
    entries.push({ ...content, prev, hash: entryHash(content, prev, sha256) })
  }
  const records = facts.map(({ table, record }) => ({
    table: table.replace('_fact', ''),
    id: record,
    idOfCode: record,
  }))
  return { entries, facts, records, answers }
}

function digestsOf(facts: readonly FactRow[]) {
  return facts.map(({ table, id, row, salt }) => ({ table, id, digest: factDigest(row, salt, sha256) }))
}

/** An answer that was given as known at an entry. */
function answerOf(id: string, n: number): AnswerRow {
  const digest = answerDigest({ id, n, body: '{"answers":[]}' }, sha256)
  return { id, n, digest, digestOfRow: digest }
}

function factOf(name: string, recordedIn: number): FactRow {
  const { table, id } = namesOf(name)
  const row: Record<string, JsonValue> = {
    id,
    recorded_in: recordedIn,
    first_day: '2027-04-01',
    supersedes: null,
  }
  return {
    ...{ table, id, recordedIn, supersededIn: null, record: `record-${id}` },
    ...{ salt: sha256(name).slice(0, 32), row },
  }
}

function namesOf(name: string): { table: string; id: string } {
  const [table = '', id = ''] = name.split(' ')
  return { table, id }
}
