import { z } from 'zod'

/** The fields of a record that did read, and the names of those that may stand there unread. */
export type ReadFields = { fields: Record<string, unknown>; unread: ReadonlySet<string> }

/**
 * The fields of a record that as a whole did not fit its schema; nothing where it is no object. A field reads or does
 * not read as a whole, whatever is good inside it.
 */
export function readFields(schema: z.ZodType, value: unknown): ReadFields | undefined {
  if (!(schema instanceof z.ZodObject) || typeof value !== 'object' || value === null || Array.isArray(value))
    return undefined
  const shape = schema.shape as Record<string, z.ZodType>
  const raw = value as Record<string, unknown>
  // An unknown key may be any key that is not there, written wrong.
  const hasUnknown = Object.keys(raw).some((key) => !Object.hasOwn(shape, key))
  const fields: Record<string, unknown> = {}
  const unread = new Set<string>()
  for (const [key, field] of Object.entries(shape)) {
    if (!Object.hasOwn(raw, key)) {
      if (hasUnknown) unread.add(key)
      continue
    }
    const read = field.safeParse(raw[key])
    if (read.success) fields[key] = read.data
    else unread.add(key)
  }
  return { fields, unread }
}
