/**
 * Characters that take no room or show as nothing: format characters that are not themselves signs, fillers, the empty
 * Braille cell and the empty note head.
 */
const HIDDEN = /[\u{16FE4}\p{Default_Ignorable_Code_Point}\uFFF9-\uFFFB\u2800\u{1D159}]/u
const EVERY_HIDDEN = /[\u{16FE4}\p{Default_Ignorable_Code_Point}\p{Cf}\u2800\u{1D159}]/gu

/** The joiner and non-joiner choose the shape of letters in these scripts. */
const JOINED_SCRIPTS = [
  ...['Arab', 'Syrc', 'Nkoo', 'Adlm', 'Rohg', 'Mong'],
  ...['Deva', 'Beng', 'Guru', 'Gujr', 'Orya', 'Taml', 'Telu', 'Knda', 'Mlym', 'Sinh'],
  ...['Khmr', 'Mymr', 'Tibt'],
]
  .map((script) => `\\p{Script_Extensions=${script}}`)
  .join('')

/** What shapes the letter before it: joiners in scripts that join, variants of Han and of Mongolian letters. */
const SHAPING = new RegExp(
  `(?<=[${JOINED_SCRIPTS}])[\\u200C\\u200D]|(?<=\\p{Script=Han})[\\uFE00-\\uFE0F\\u{E0100}-\\u{E01EF}]|(?<=\\p{Script=Mongolian})[\\u180B-\\u180D\\u180F]`,
  'gu',
)

/** A hidden character: its code as Unicode writes it, `U+200B`, and which letter of the text it is, from 1. */
type HiddenCharacter = { code: string; at: number }

/**
 * The first character of a text that nobody sees and that is no part of its letters: zero-width spaces, marks that turn
 * the reading order, soft hyphens, fillers. Two names or numbers could differ by it alone.
 */
export function hiddenInName(text: string): HiddenCharacter | undefined {
  // What shapes a letter is taken for one letter more, so that the place of what follows stays right.
  return firstHidden(HIDDEN.test(text) ? text.replace(SHAPING, ' ') : text, HIDDEN)
}

/** The first hidden character of an id or a number, in which none has a use. */
export function hiddenInId(text: string): HiddenCharacter | undefined {
  return firstHidden(text, new RegExp(EVERY_HIDDEN.source, 'u'))
}

function firstHidden(text: string, pattern: RegExp): HiddenCharacter | undefined {
  const index = text.search(pattern)
  const code = index < 0 ? undefined : text.codePointAt(index)
  if (code === undefined) return undefined
  const at = Array.from(text.slice(0, index)).length + 1
  return { code: `U+${code.toString(16).toUpperCase().padStart(4, '0')}`, at }
}

/** A text without what nobody sees. */
export function withoutHidden(text: string): string {
  return text.replace(EVERY_HIDDEN, '')
}
