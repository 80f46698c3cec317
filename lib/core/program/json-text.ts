import type { PathStep } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import type { JsonExpected } from './problems.ts'

/** The most bytes of UTF-8 that a file may have. */
export const MOST_BYTES = 64 * 1024 * 1024

/** How deep lists and objects may lie in each other. */
export const MOST_NESTING = 64

/** How many keys one object may have: many more than any record has. */
export const MOST_KEYS = 1000

/**
 * How many values a file may hold, those in lists and under keys and what holds them: built, millions of empty objects
 * take a hundred times the room of their text.
 */
export const MOST_VALUES = 4_000_000

/** Keys with a meaning of their own in the language that reads the file. */
export const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype'])

const BYTE_ORDER_MARK = '\uFEFF'
/** A zero byte, or what stands where bytes were no UTF-8. */
const NO_TEXT = /[\0\uFFFD]/
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const SPACE = /[ \t\n\r]*/y
/** What a string holds up to its closing quote, an escape or a fault. */
// eslint-disable-next-line no-control-regex -- JSON forbids control characters in strings, so they are looked for
const PLAIN = /[^"\\\u0000-\u001f]*/y
const WORDS = ['true', 'false', 'null']

/**
 * Reads JSON text into a value; nothing where it is none, with the problems added to the list. In one pass and before
 * any value is built it checks the size, the nesting, the number of values, the grammar, and that no object has a key
 * twice or a forbidden one. A byte order mark at the start is let go.
 */
export function readJson(text: string, problems: ProblemList): { value: unknown } | undefined {
  if (isTooLarge(text)) {
    problems.add([], undefined, { kind: 'too-large', mostBytes: MOST_BYTES })
    return undefined
  }
  const noText = text.search(NO_TEXT)
  if (noText >= 0) {
    problems.add([], undefined, { kind: 'not-text', ...lineAndColumn(text, noText) })
    return undefined
  }
  const body = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text
  if (body.trim() === '') {
    problems.add([], undefined, { kind: 'empty-text' })
    return undefined
  }
  if (!new JsonScan(body, problems).isJson()) return undefined
  return { value: JSON.parse(body) as unknown }
}

function isTooLarge(text: string): boolean {
  if (text.length > MOST_BYTES) return true
  if (text.length * 3 <= MOST_BYTES) return false
  let bytes = 0
  for (let index = 0; index < text.length; index += 1) {
    const code = text.charCodeAt(index)
    // Each half of a pair counts 2 of the 4 bytes of its letter.
    bytes += code < 0x80 ? 1 : code < 0x800 || (code >= 0xd800 && code < 0xe000) ? 2 : 3
  }
  return bytes > MOST_BYTES
}

function lineAndColumn(text: string, index: number): { line: number; column: number } {
  let line = 1
  let start = 0
  for (let end = text.indexOf('\n'); end >= 0 && end < index; end = text.indexOf('\n', end + 1)) {
    line += 1
    start = end + 1
  }
  return { line, column: index - start + 1 }
}

/** The place where a text stops being JSON within the limits; thrown and caught in this file only. */
class ScanStopped extends Error {}

class JsonScan {
  private at = 0
  private values = 0
  private readonly path: PathStep[] = []

  constructor(
    private readonly text: string,
    private readonly problems: ProblemList,
  ) {}

  isJson(): boolean {
    try {
      this.space()
      this.value()
      this.space()
      if (this.at < this.text.length) this.stop('end-of-text')
      return true
    } catch (stopped) {
      if (stopped instanceof ScanStopped) return false
      throw stopped
    }
  }

  private value(): void {
    this.values += 1
    if (this.values > MOST_VALUES) {
      this.problems.add(this.path, undefined, { kind: 'too-many-values', most: MOST_VALUES })
      throw new ScanStopped()
    }
    const letter = this.text[this.at]
    if (letter === '{') this.object()
    else if (letter === '[') this.list()
    else if (letter === '"') this.string()
    else if (letter === '-' || (letter !== undefined && letter >= '0' && letter <= '9')) {
      if (this.skip(NUMBER) === 0) this.stop('number')
    } else {
      const word = WORDS.find((known) => this.text.startsWith(known, this.at))
      if (word === undefined) this.stop('value')
      else this.at += word.length
    }
  }

  private object(): void {
    this.open()
    if (this.text[this.at] === '}') {
      this.at += 1
      return
    }
    const keys = new Set<string>()
    for (;;) {
      if (this.text[this.at] !== '"') this.stop('key')
      const key = this.string()
      if (keys.size >= MOST_KEYS && !keys.has(key)) {
        this.problems.add(this.path, undefined, { kind: 'too-many', most: MOST_KEYS, count: MOST_KEYS + 1 })
        throw new ScanStopped()
      }
      this.path.push(key)
      if (FORBIDDEN_KEYS.has(key)) this.problems.add(this.path, undefined, { kind: 'forbidden-key', key })
      if (keys.has(key)) this.problems.add(this.path, undefined, { kind: 'duplicate-key', key })
      keys.add(key)
      this.space()
      if (this.text[this.at] !== ':') this.stop('colon')
      this.at += 1
      this.space()
      this.value()
      this.path.pop()
      if (this.isClosed('}')) return
    }
  }

  private list(): void {
    this.open()
    if (this.text[this.at] === ']') {
      this.at += 1
      return
    }
    for (let index = 0; ; index += 1) {
      this.path.push(index)
      this.value()
      this.path.pop()
      if (this.isClosed(']')) return
    }
  }

  /** Past an opening bracket, unless it lies too deep. */
  private open(): void {
    if (this.path.length >= MOST_NESTING) {
      this.problems.add(this.path, undefined, { kind: 'nested-too-deep', most: MOST_NESTING })
      throw new ScanStopped()
    }
    this.at += 1
    this.space()
  }

  /** Past a comma, or past the closing bracket: whether it was the latter. */
  private isClosed(bracket: '}' | ']'): boolean {
    this.space()
    const letter = this.text[this.at]
    if (letter !== ',' && letter !== bracket) this.stop('comma-or-end')
    this.at += 1
    if (letter === bracket) return true
    this.space()
    return false
  }

  /** Past a string: the text that it stands for. */
  private string(): string {
    const start = this.at
    this.at += 1
    let isPlain = true
    for (;;) {
      this.skip(PLAIN)
      const letter = this.text[this.at]
      if (letter === '"') break
      if (letter !== '\\') this.stop(letter === undefined ? 'closing-quote' : 'escaped-control-character')
      isPlain = false
      this.escape()
    }
    this.at += 1
    const quoted = this.text.slice(start, this.at)
    return isPlain ? quoted.slice(1, -1) : (JSON.parse(quoted) as string)
  }

  /** Past an escape; half a pair and the letter 0 are refused, since no text in UTF-8 and no database holds them. */
  private escape(): void {
    const code = this.codeUnit(this.at)
    if (code === undefined) {
      if (!'"\\/bfnrt'.includes(this.text[this.at + 1] ?? '?')) this.stop('escape')
      this.at += 2
      return
    }
    if (code === 0 || (code >= 0xdc00 && code < 0xe000)) this.stop('escape')
    if (code >= 0xd800 && code < 0xdc00) {
      const second = this.codeUnit(this.at + 6)
      if (second === undefined || second < 0xdc00 || second >= 0xe000) this.stop('escape')
      this.at += 6
    }
    this.at += 6
  }

  /** The code unit of an escape with four hexadecimal digits, where one stands. */
  private codeUnit(at: number): number | undefined {
    const digits = this.text.slice(at + 2, at + 6)
    return this.text.startsWith('\\u', at) && /^[0-9a-fA-F]{4}$/.test(digits)
      ? parseInt(digits, 16)
      : undefined
  }

  private space(): void {
    this.skip(SPACE)
  }

  private skip(pattern: RegExp): number {
    pattern.lastIndex = this.at
    const length = pattern.exec(this.text)?.[0].length ?? 0
    this.at += length
    return length
  }

  private stop(expected: JsonExpected): never {
    const figures = { kind: 'not-json', expected, ...lineAndColumn(this.text, this.at) } as const
    this.problems.add(this.path, this.text.slice(this.at, this.at + 80) || undefined, figures)
    throw new ScanStopped()
  }
}
