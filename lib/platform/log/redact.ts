/** What stands in the log instead of what must not. */
export const REDACTED = '[redacted]'

/** Fields that never reach the log, whatever stands in them; compared without case and without `_` and `-`. */
const SECRET_FIELD =
  /password|passphrase|secret|token|cookie|authorization|hash$|digest$|^link|^code$|^url$|connectionstring/
/** Fields that hold who somebody is. */
const PERSONAL_FIELD = /name$|^email|^phone|^birth|^contact|^person$|^statement$|^values?$|^input$|^body$/
/** Fields whose names look like one of those and that hold neither. */
const HARMLESS_FIELD = new Set(['hostname'])

const DEEPEST = 6
const LONGEST_LIST = 50
const LONGEST_TEXT = 2000

/** Tokens, keys and hashes; an id with its dashes is none. */
const LONG_RANDOM_TEXT =
  /\b(?![0-9a-f]{8}-[0-9a-f]{4}-)(?=[\w-]*[0-9])(?=[\w-]*[A-Za-z])[\w-]{32,}(?:\.[\w-]+)*/g

/**
 * A value as it may stand in the log: secrets and names out, by the name of the field, and links, keys and quoted
 * texts out of every sentence.
 */
export function redacted(value: unknown, depth = 0): unknown {
  if (typeof value === 'string') return redactedText(value)
  if (typeof value === 'bigint') return String(value)
  if (typeof value === 'function' || typeof value === 'symbol') return REDACTED
  if (typeof value !== 'object' || value === null) return value
  if (depth >= DEEPEST) return REDACTED
  if (value instanceof Error) return redactedError(value)
  if (value instanceof Date) return value.toISOString()
  if (ArrayBuffer.isView(value)) return REDACTED
  if (Array.isArray(value)) return value.slice(0, LONGEST_LIST).map((each) => redacted(each, depth + 1))
  return Object.fromEntries(
    Object.entries(value).map(([field, held]) => [
      field,
      isKeptBack(field) ? REDACTED : redacted(held, depth + 1),
    ]),
  )
}

function isKeptBack(field: string): boolean {
  const plain = field.toLowerCase().replaceAll(/[_-]/g, '')
  return !HARMLESS_FIELD.has(plain) && (SECRET_FIELD.test(plain) || PERSONAL_FIELD.test(plain))
}

/**
 * A sentence without what must not stand in the log: passwords in addresses, queries, links that work once, long
 * random texts, and whatever is quoted unless it is a plain identifier (error messages quote what somebody typed).
 */
export function redactedText(text: string): string {
  return text
    .slice(0, LONGEST_TEXT)
    .replaceAll(/\/\/[^\s/@]+@/g, `//${REDACTED}@`)
    .replaceAll(/\/(begin|set-password)\/[^\s/?#"']+/g, `/$1/${REDACTED}`)
    .replaceAll(/\?[^\s"'#]+=[^\s"'#]*/g, `?${REDACTED}`)
    .replaceAll(/"(?![a-z_][a-z0-9_.]*")[^"]*"/g, `"${REDACTED}"`)
    .replaceAll(LONG_RANDOM_TEXT, REDACTED)
}

/** An error as its kind, its message, where it happened, and what a database says of the place; never its values. */
export function redactedError(error: Error): Record<string, unknown> {
  const said = error as Error & Record<string, unknown>
  const kept = ['code', 'digest', 'table', 'column', 'constraint', 'routine', 'syscall', 'port']
  return {
    kind: error.constructor.name === 'Error' ? error.name : error.constructor.name,
    message: redactedText(error.message),
    ...Object.fromEntries(
      kept.flatMap((field) => {
        const held = said[field]
        return typeof held === 'string' || typeof held === 'number'
          ? [[field, redactedText(String(held))]]
          : []
      }),
    ),
    at: framesOf(error),
    ...(error.cause instanceof Error ? { cause: redactedError(error.cause) } : {}),
  }
}

/** The places of a stack without its first lines, which repeat the message. */
function framesOf(error: Error): string[] {
  return (error.stack ?? '')
    .split('\n')
    .filter((line) => /^\s+at /.test(line))
    .slice(0, 12)
    .map((line) => line.trim())
}
