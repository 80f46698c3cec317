import { InvariantBroken } from './result.ts'

/** A value that JSON can hold. */
export type JsonValue =
  null | boolean | number | string | readonly JsonValue[] | { readonly [name: string]: JsonValue }

/** Half of a surrogate pair: with the flag `u` the pattern sees whole pairs as one letter of another class. */
const LONE_SURROGATE = /\p{Surrogate}/u

/**
 * Writes a value as the one text that RFC 8785 (JSON Canonicalization Scheme) gives it: no blanks, names in the order
 * of their UTF-16 code units, numbers and texts as ECMAScript writes them. What JSON cannot hold is refused and never
 * left out: NaN, infinities, undefined, half a surrogate pair, big integers, objects of a class. Throws
 * InvariantBroken, which names the place.
 */
export function canonicalJson(value: JsonValue): string {
  return written(value, '$')
}

function written(value: unknown, place: string): string {
  switch (typeof value) {
    case 'boolean':
      return String(value)
    case 'number':
      if (!Number.isFinite(value)) throw refused(place, `the number ${value}`)
      return JSON.stringify(value)
    case 'string':
      return writtenText(value, place)
    case 'object':
      if (value === null) return 'null'
      return Array.isArray(value) ? writtenList(value, place) : writtenObject(value, place)
    case 'bigint':
    case 'function':
    case 'symbol':
    case 'undefined':
      throw refused(place, `something of the type ${typeof value}`)
  }
}

function writtenText(text: string, place: string): string {
  if (LONE_SURROGATE.test(text)) throw refused(place, 'half a surrogate pair')
  return JSON.stringify(text)
}

function writtenList(list: readonly unknown[], place: string): string {
  // By Array.from, so that a hole is met as undefined and refused.
  const parts = Array.from(list, (item, index) => written(item, `${place}[${index}]`))
  return `[${parts.join(',')}]`
}

function writtenObject(value: object, place: string): string {
  const prototype: unknown = Object.getPrototypeOf(value)
  if (prototype !== Object.prototype && prototype !== null) throw refused(place, 'an object of a class')
  // Without a comparer ECMAScript sorts texts by UTF-16 code units, which is what the RFC wants.
  const parts = Object.entries(value)
    .map(([name, held]): [string, unknown] => [name, held])
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, held]) => `${writtenText(name, place)}:${written(held, `${place}.${name}`)}`)
  return `{${parts.join(',')}}`
}

function refused(place: string, what: string): InvariantBroken {
  return new InvariantBroken(`Canonical JSON cannot hold ${what}, at ${place}.`)
}
