import { openRecords } from '../../core/authority/ask.ts'
import type { Authority } from '../../core/authority/authority-index.ts'
import { entryAt, recordsAt, type KnownMoment } from '../../core/program/known.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import { refusedBecause, type NotDone } from '../door/outcome.ts'

/** How many moments of knowing are kept open beside the present one. */
const MOST_KEPT = 8

const opened = new WeakMap<object, Map<number, Authority>>()

/**
 * The records as known at a moment, opened for asking. Facts never change, so what was known at an entry is opened
 * once for as long as the snapshot stands.
 */
export function authorityAt(
  snapshot: Snapshot,
  moment: KnownMoment | undefined,
): { n: number; authority: Authority } {
  const n = moment === undefined ? snapshot.n : entryAt(snapshot.program, moment)
  const held = opened.get(snapshot) ?? new Map<number, Authority>()
  opened.set(snapshot, held)
  const known = held.get(n)
  if (known !== undefined) return { n, authority: known }
  const authority = openRecords(recordsAt(snapshot.program, n))
  const [oldest] = held.keys()
  if (held.size >= MOST_KEPT && oldest !== undefined) held.delete(oldest)
  held.set(n, authority)
  return { n, authority }
}

/** The same at a moment that somebody asked for; one before the first entry or after the last is refused. */
export function authorityAsked(
  snapshot: Snapshot,
  moment: KnownMoment | undefined,
): Result<{ n: number; authority: Authority }, NotDone> {
  const known = authorityAt(snapshot, moment)
  const isToCome = moment !== undefined && 'n' in moment && moment.n > snapshot.n
  return known.n === 0 || isToCome
    ? refusal(refusedBecause({ kind: 'not-yet-known', latest: snapshot.n }))
    : success(known)
}
