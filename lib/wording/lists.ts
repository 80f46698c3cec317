/** Parts joined as in speech: `a`, `a and b`, `a, b and c`. */
export function joinedByAnd(parts: readonly string[]): string {
  return joined(parts, 'and')
}

/** Alternatives joined as in speech: `a`, `a or b`, `a, b or c`. */
export function joinedByOr(parts: readonly string[]): string {
  return joined(parts, 'or')
}

function joined(parts: readonly string[], word: string): string {
  const last = parts.at(-1)
  if (last === undefined) return ''
  return parts.length === 1 ? last : `${parts.slice(0, -1).join(', ')} ${word} ${last}`
}

/** A phrase as a sentence: its first letter large, and a full stop after it where it has none of its own. */
export function asSentence(phrase: string): string {
  return capitalised(/[.!?]["”’]?$/.test(phrase) ? phrase : `${phrase}.`)
}

/** A phrase with its first letter large: the form at the start of a line. */
export function capitalised(phrase: string): string {
  const first = phrase.codePointAt(0)
  if (first === undefined) return phrase
  const letter = String.fromCodePoint(first)
  return letter.toUpperCase() + phrase.slice(letter.length)
}
