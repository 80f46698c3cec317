import { InvariantBroken } from '../kernel/result.ts'
import { canonicalJson, type JsonValue } from '../kernel/canonical-json.ts'

/**
 * SHA-256 of the parts one after the other, texts as UTF-8, in 64 small hexadecimal digits. Passed in: the core has no
 * cryptography of its own.
 */
export type Sha256 = (...parts: readonly (string | Uint8Array)[]) => string

/** What an entry says: all of it that is hashed. Instants are ISO 8601 in UTC with milliseconds; null where it has none. */
export type EntryContent = {
  n: number
  at: string
  statedAt: string | null
  command: string | null
  actor: string | null
  event: string
  v: number
  /** Canonical JSON text: these very bytes are hashed. */
  body: string
}

/** An entry as it is kept. `prev` and `hash` in hexadecimal; the first entry has no `prev`. */
export type EntryRow = EntryContent & { prev: string | null; hash: string }

/** The text of an entry that its hash is taken of, after the hash of the entry before. */
export function hashedText(entry: EntryContent): string {
  const { n, at, statedAt, command, actor, event, v, body } = entry
  return canonicalJson({ n, at, stated_at: statedAt, command, actor, event, v, body })
}

/** The hash of an entry: SHA-256 of the bytes of the hash before it and its own text. */
export function entryHash(entry: EntryContent, prev: string | null, sha256: Sha256): string {
  const text = hashedText(entry)
  return prev === null ? sha256(text) : sha256(bytesOfHex(prev), text)
}

/**
 * The digest of a fact that its entry lists. `row` holds the columns by their names, days and ids as text; it leaves out
 * those that are empty, `superseded_in`, which is written later, and `salt`. The salt (hexadecimal) keeps anybody from
 * finding out by trying what a row that was blanked had said.
 */
export function factDigest(row: Readonly<Record<string, JsonValue>>, salt: string, sha256: Sha256): string {
  return sha256(bytesOfHex(salt), canonicalJson(row))
}

/**
 * The digest of an answer that the entry in which it was kept says. `row` holds its columns by their names as
 * {@link factDigest} takes them, without the digest itself.
 */
export function answerDigest(row: Readonly<Record<string, JsonValue>>, sha256: Sha256): string {
  return sha256(canonicalJson(row))
}

const HEX = /^(?:[0-9a-f]{2})*$/

/** The bytes that small hexadecimal digits spell. Throws InvariantBroken where they spell none. */
export function bytesOfHex(hex: string): Uint8Array {
  if (!HEX.test(hex)) throw new InvariantBroken(`"${hex}" is not hexadecimal.`)
  return Uint8Array.from({ length: hex.length / 2 }, (_, at) => parseInt(hex.slice(2 * at, 2 * at + 2), 16))
}
