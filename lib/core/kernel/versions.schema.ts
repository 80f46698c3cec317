import { z } from 'zod'
import { idField } from './fields.schema.ts'

/** The number of an entry of the journal. */
export const entryNumber = z.int().min(1).max(2_000_000_000)

/**
 * What every fact carries: its stable id, the entry in which it became known and, where corrected or withdrawn as
 * wrong, the entry in which it ceased to be; `supersedes` names the entry number of the version it corrects.
 */
export const versionFields = {
  id: idField,
  recordedIn: entryNumber,
  supersededIn: z.exactOptional(entryNumber),
  supersedes: z.exactOptional(entryNumber),
}

/** The times of knowing of one version of a record. */
export type Version = { id: string; recordedIn: number; supersededIn?: number; supersedes?: number }
