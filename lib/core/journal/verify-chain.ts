import { entryHash, type EntryRow, type Sha256 } from './entry.ts'
import type { JournalFinding } from './findings.ts'

/** An entry that stands: `n` is the number it was written under. */
export type SoundEntry = { n: number; body: string }

export type ChainVerdict = { findings: readonly JournalFinding[]; sound: readonly SoundEntry[] }

/** Recomputes every hash of a journal and follows the chain. `entries` come in the order of their numbers. */
export function verifyChain(entries: readonly EntryRow[], sha256: Sha256): ChainVerdict {
  const writtenAs = placesInChain(entries)
  const findings: JournalFinding[] = []
  const sound: SoundEntry[] = []
  let before: EntryRow | undefined
  let isBeforeInPlace = true
  for (const entry of entries) {
    const expected = (before?.n ?? 0) + 1
    if (entry.n > expected) findings.push({ kind: 'entries-missing', first: expected, last: entry.n - 1 })
    const place = writtenNumber(entry, writtenAs.get(entry), sha256)
    if (place === undefined) findings.push({ kind: 'entry-altered', n: entry.n })
    else if (place !== entry.n) findings.push({ kind: 'entry-out-of-place', n: entry.n, writtenAs: place })
    if (place !== undefined) sound.push({ n: place, body: entry.body })
    // Of an entry that is altered, missing or out of place it has been told already that its links may not hold.
    const isInPlace = place === entry.n
    const isLinkAsked = isInPlace && isBeforeInPlace && entry.n === expected
    if (isLinkAsked && entry.prev !== (before?.hash ?? null))
      findings.push({ kind: 'chain-broken', n: entry.n })
    before = entry
    isBeforeInPlace = isInPlace
  }
  return { findings, sound }
}

/** The number under which the hash of an entry holds: its own, or its place in the chain; nothing where under neither. */
function writtenNumber(entry: EntryRow, place: number | undefined, sha256: Sha256): number | undefined {
  return [entry.n, place].find(
    (n) => n !== undefined && entryHash({ ...entry, n }, entry.prev, sha256) === entry.hash,
  )
}

/** The place of each entry in the chain as the hashes alone have it, as far as that can be followed from the first. */
function placesInChain(entries: readonly EntryRow[]): ReadonlyMap<EntryRow, number> {
  const following = new Map(entries.map((entry) => [entry.prev, entry]))
  const places = new Map<EntryRow, number>()
  let next = following.get(null)
  while (next !== undefined && !places.has(next)) {
    places.set(next, places.size + 1)
    next = following.get(next.hash)
  }
  return places
}
