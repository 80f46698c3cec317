import { createHash } from 'node:crypto'
import type { Sha256 } from '../../core/journal/entry.ts'

/** SHA-256 of parts that follow each other, in hexadecimal, as the core's journal asks for it. */
export const sha256: Sha256 = (...parts) => {
  const hash = createHash('sha256')
  for (const part of parts) hash.update(part)
  return hash.digest('hex')
}
