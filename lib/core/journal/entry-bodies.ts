import { readEntryBody, type EntryBody } from './entry-body.schema.ts'
import type { JournalFinding } from './findings.ts'
import type { SoundEntry } from './verify-chain.ts'

/** What the entries that stand say, by the number each was written under. */
export type EntryBodies = ReadonlyMap<number, EntryBody>

/** Reads the bodies of entries that stand, and tells of those that cannot be read. */
export function readBodies(sound: readonly SoundEntry[]): {
  bodies: EntryBodies
  findings: readonly JournalFinding[]
} {
  const findings: JournalFinding[] = []
  const bodies = new Map<number, EntryBody>()
  for (const { n, body } of sound) {
    const read = readEntryBody(body)
    if (read === undefined) findings.push({ kind: 'body-unreadable', n })
    else bodies.set(n, read)
  }
  return { bodies, findings }
}
