import { z } from 'zod'
import { canonicalJson, type JsonValue } from '../kernel/canonical-json.ts'

const json: z.ZodType<JsonValue> = z.json()

const entryBody = z.object({
  /** The records that the entry is about. */
  about: z.array(z.string()),
  /** The facts that it recorded, each with the digest of its row. */
  facts: z.array(z.object({ table: z.string(), id: z.string(), digest: z.string() })),
  /** The facts that it closed. */
  closed: z.array(z.object({ table: z.string(), id: z.string() })),
  /** The facts whose columns it blanked, each with the digest that it has since. */
  erased: z.exactOptional(z.array(z.object({ table: z.string(), id: z.string(), digest: z.string() }))),
  outcome: json,
  said: z.exactOptional(json),
})

/** What the body of an entry holds: ids and digests only, never a name. */
export type EntryBody = z.infer<typeof entryBody>

/** What an entry says of an answer that it kept. */
const saidOfAnswer = z.object({ answer: z.object({ id: z.string(), digest: z.string() }) })

/** The answer that an entry says was kept, with the digest it had; nothing where it says of none. */
export function answerKeptBy({ said }: EntryBody): { id: string; digest: string } | undefined {
  return saidOfAnswer.safeParse(said).data?.answer
}

/** Reads the body of an entry. Nothing where it is no canonical JSON, or none of this shape. */
export function readEntryBody(text: string): EntryBody | undefined {
  let value: JsonValue
  try {
    value = JSON.parse(text) as JsonValue
    if (canonicalJson(value) !== text) return undefined
  } catch {
    return undefined
  }
  return entryBody.safeParse(value).data
}
