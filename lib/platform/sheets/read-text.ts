import Papa from 'papaparse'
import { withoutGuard } from '../../wording/csv.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'

/** Why bytes are no table of texts. Data, never sentences. */
export type TableFault =
  | { kind: 'not-text' }
  | { kind: 'quote-not-closed'; row: number }
  | { kind: 'hidden-character'; code: number }

const DELIMITERS = [',', ';', '\t'] as const

/**
 * Reads text that was uploaded or pasted as rows of cells: UTF-8 with or without its mark, UTF-16 with its mark, else
 * Windows-1252; commas, semicolons or tabs, whichever the first rows have. An apostrophe that keeps a cell from being
 * a formula is left out.
 */
export function readTextTable(bytes: Uint8Array): Result<readonly (readonly string[])[], TableFault> {
  const text = decoded(bytes)
  if (text === undefined) return refusal({ kind: 'not-text' })
  if (text.includes('\0')) return refusal({ kind: 'hidden-character', code: 0 })
  const parsed = Papa.parse<string[]>(text, { delimiter: delimiterOf(text), skipEmptyLines: false })
  const broken = parsed.errors.find(({ type }) => type === 'Quotes')
  if (broken !== undefined) return refusal({ kind: 'quote-not-closed', row: (broken.row ?? 0) + 1 })
  return success(parsed.data.map((cells) => cells.map(withoutGuard)))
}

function decoded(bytes: Uint8Array): string | undefined {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return decodedAs('utf-16le', bytes)
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return decodedAs('utf-16be', bytes)
  const text = decodedAs('utf-8', bytes)
  if (text !== undefined) return text
  // A picture or a program is text in no encoding: every second of its bytes is none that anybody types.
  return looksBinary(bytes) ? undefined : fromWindows1252(bytes)
}

function decodedAs(encoding: string, bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes)
  } catch {
    return undefined
  }
}

/** What Windows-1252 has from 0x80 through 0x9F; everything else is as in ISO 8859-1. WHATWG Encoding Standard. */
const FROM_80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ'

/** Node 20 reads that encoding as ISO 8859-1, which turns every curly quote into a control character. */
function fromWindows1252(bytes: Uint8Array): string {
  const text = Buffer.from(bytes).toString('latin1')
  return text.replace(/[\u0080-\u009f]/g, (letter) => FROM_80.charAt(letter.charCodeAt(0) - 0x80))
}

/** Control characters that stand in no typed text; Windows-1252 would take any of them. */
function looksBinary(bytes: Uint8Array): boolean {
  const looked = bytes.subarray(0, 4096)
  return looked.some((byte) => byte < 0x09 || (byte > 0x0d && byte < 0x20) || byte === 0x7f)
}

/** The one of the three that stands most often in the first lines, outside of quotes. */
function delimiterOf(text: string): string {
  const begin = text.slice(0, 20_000).replace(/"(?:[^"]|"")*"/g, '')
  const counted = DELIMITERS.map((delimiter) => ({ delimiter, count: begin.split(delimiter).length - 1 }))
  return counted.sort((left, right) => right.count - left.count)[0]?.delimiter ?? ','
}
