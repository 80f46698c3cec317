import type { JsonExpected, JsonType, ReferenceTo, TextForm } from '../core/program/problems.ts'

/** A type of JSON with its article. */
export const jsonTypeWords: { readonly [Type in JsonType]: string } = {
  text: 'a text',
  number: 'a number',
  'whole-number': 'a whole number',
  'true-or-false': 'true or false',
  list: 'a list',
  object: 'an object',
  nothing: 'nothing (null)',
}

/** What JSON wants at the place where a text stops being JSON. */
export const jsonExpectedWords: { readonly [Expected in JsonExpected]: string } = {
  value: 'a value',
  key: 'a key in double quotes',
  colon: 'a colon after the key',
  'comma-or-end': 'a comma, or the end of the list or object',
  'end-of-text': 'the end of the file',
  'closing-quote': 'a closing quote',
  escape: 'one of the escapes that JSON has after a backslash',
  'escaped-control-character': 'the control character to be written as an escape',
  number: 'a number as JSON writes them',
}

/** What a text must look like. */
export const textFormWords: { readonly [Form in TextForm]: string } = {
  id: 'An id is 1 to 64 small letters, digits and hyphens.',
  level: 'A level is 1 to 32 letters, digits and hyphens.',
  'rule-id': 'A rule id is words joined by dots, like grant.bucking.A.',
  name: 'A name stands on one line, is not blank, and has no control characters.',
  'card-number': 'A card number stands on one line, is not blank, and has no control characters.',
  text: 'A text is not blank and has no control characters but tabs and line ends.',
  other: 'The text is not written as it must be here.',
}

/** One record that a reference may lead to. */
export const referenceWords: { readonly [To in ReferenceTo]: string } = {
  books: 'book',
  editions: 'edition',
  rules: 'rule of that edition',
  levels: 'level of that book',
  organisations: 'organisation',
  places: 'place',
  people: 'person',
  cards: 'card',
  'card-numbers': 'card number',
  restrictions: 'restriction of that card',
  suspensions: 'suspension',
  items: 'item',
  cautions: 'caution',
  hitches: 'hitch',
}

/** A suggestion where a known name is near: ` Is “people” meant?`; empty where none is. */
export function nearestText(nearest: string | undefined): string {
  return nearest === undefined ? '' : ` Is “${nearest}” meant?`
}

/** What people call the characters that nobody sees and that are met most. */
const HIDDEN_NAMES: ReadonlyMap<string, string> = new Map([
  ['U+00AD', 'a soft hyphen'],
  ['U+200B', 'a zero-width space'],
  ['U+200C', 'a zero-width non-joiner'],
  ['U+200D', 'a zero-width joiner'],
  ['U+200E', 'a left-to-right mark'],
  ['U+200F', 'a right-to-left mark'],
  ['U+202E', 'a mark that turns the reading order'],
  ['U+2060', 'a word joiner'],
  ['U+3164', 'a blank filler'],
  ['U+FEFF', 'a byte order mark'],
])

/** A hidden character with its name, where it has a common one, and its code: `a zero-width space (U+200B)`. */
export function hiddenCharacterText(code: string): string {
  return `${HIDDEN_NAMES.get(code) ?? 'a character'} (${code})`
}
