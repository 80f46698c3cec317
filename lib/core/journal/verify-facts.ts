import type { JsonValue } from '../kernel/canonical-json.ts'
import type { EntryBodies } from './entry-bodies.ts'
import { factDigest, type Sha256 } from './entry.ts'
import type { JournalFinding } from './findings.ts'

/** A fact as it is kept. `row` and `salt` are what {@link factDigest} takes. */
export type FactRow = {
  table: string
  id: string
  recordedIn: number
  supersededIn: number | null
  /** The id of the record that it is a fact of. */
  record: string
  salt: string
  row: Readonly<Record<string, JsonValue>>
}

/**
 * Compares facts with the entries that name them. Only entries that stand are asked: what an altered or missing entry
 * said of its facts is not known, and that it is so has been told. `last` is the number of the last entry there is.
 */
export function verifyFacts(
  bodies: EntryBodies,
  last: number,
  facts: readonly FactRow[],
  sha256: Sha256,
): readonly JournalFinding[] {
  const findings: JournalFinding[] = []
  const rows = new Map(facts.map((fact) => [keyOf(fact), fact]))
  const named = new Set<string>()
  const closed = new Set<string>()
  const erased = erasedBy(bodies)
  for (const [n, body] of bodies) {
    for (const { table, id, digest } of body.facts) {
      named.add(keyOf({ table, id }))
      const fact = rows.get(keyOf({ table, id }))
      if (fact === undefined) findings.push({ kind: 'fact-missing', n, table, id })
      else {
        const since = erased.get(keyOf(fact)) ?? { n, digest }
        const saysSo = since.n === n || fact.row['erased_in'] === since.n
        if (!saysSo || factDigest(fact.row, fact.salt, sha256) !== since.digest)
          findings.push({ kind: 'fact-altered', n: since.n, table, id })
      }
    }
    for (const { table, id } of body.closed) {
      closed.add(keyOf({ table, id }))
      const fact = rows.get(keyOf({ table, id }))
      // A fact that is gone altogether was told by the entry that recorded it.
      if (fact !== undefined && fact.supersededIn !== n)
        findings.push({ kind: 'closing-lost', n, table, id, closedIn: fact.supersededIn })
    }
  }
  const isKnown = (n: number) => bodies.has(n) || n > last
  for (const fact of facts) {
    const { table, id, recordedIn, supersededIn } = fact
    if (!named.has(keyOf(fact)) && isKnown(recordedIn))
      findings.push({ kind: 'fact-unnamed', n: recordedIn, table, id })
    if (supersededIn !== null && !closed.has(keyOf(fact)) && isKnown(supersededIn))
      findings.push({ kind: 'closing-unnamed', n: supersededIn, table, id })
  }
  return findings
}

/** The facts that were erased: by which entry, and the digest that each has since. */
export function erasedBy(bodies: EntryBodies): ReadonlyMap<string, { n: number; digest: string }> {
  const erased = new Map<string, { n: number; digest: string }>()
  for (const [n, body] of bodies)
    for (const { table, id, digest } of body.erased ?? []) erased.set(keyOf({ table, id }), { n, digest })
  return erased
}

function keyOf({ table, id }: { table: string; id: string }): string {
  return `${table} ${id}`
}
