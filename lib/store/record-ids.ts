import { v5 } from 'uuid'
import type { StoredName } from './tables/stored-facts.ts'

/** The namespace of Kerfbook's ids, made once. */
const NAMESPACE = 'b5c2c4de-6d0c-4c6b-9f6c-3c1f9f0a7d52'

/**
 * The uuid of a record: the same for the same section and id in every database. Items and expected work share their
 * ids, so they share their uuids.
 */
export function recordUuid(section: StoredName, id: string): string {
  return v5(`${section === 'expectedWork' ? 'items' : section}/${id}`, NAMESPACE)
}

/** The uuid of one version of a record: of the one that entry `n` of this journal recorded. */
export function factUuid(section: StoredName, id: string, n: number): string {
  return v5(`${section}/${id}@${n}`, NAMESPACE)
}
