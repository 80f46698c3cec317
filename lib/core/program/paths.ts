/** One step of a path through a JSON value: a key or a place in a list. */
export type PathStep = string | number

const PLAIN_KEY = /^[A-Za-z_$][A-Za-z0-9_$-]*$/

/** How many letters of a value or a key a problem shows. */
const LETTERS_SHOWN = 60

/** Writes a path the way a reader looks it up: `cards[12].lastDay`; an odd key stands in brackets and quotes. */
export function writePath(steps: readonly PathStep[]): string {
  let text = ''
  for (const step of steps) {
    if (typeof step === 'number') text += `[${step}]`
    else if (!PLAIN_KEY.test(step) || step.length > LETTERS_SHOWN)
      text += `[${JSON.stringify(shorten(step))}]`
    else text += text === '' ? step : `.${step}`
  }
  return text
}

/** The first 60 letters of a text, and an ellipsis where there are more; never half of a letter. */
export function shorten(text: string): string {
  if (text.length <= LETTERS_SHOWN) return text
  const letters = Array.from(text.slice(0, LETTERS_SHOWN * 2 + 2))
  return letters.length <= LETTERS_SHOWN && text.length <= LETTERS_SHOWN * 2
    ? text
    : `${letters.slice(0, LETTERS_SHOWN).join('')}…`
}

/** A value as JSON, shortened to 60 letters. It reads no more of the value than it shows. */
export function showValue(value: unknown): string {
  const parts: string[] = []
  let room = LETTERS_SHOWN + 1
  const write = (text: string): boolean => {
    parts.push(text)
    room -= text.length
    return room > 0
  }
  const visit = (part: unknown, depth: number): boolean => {
    if (typeof part === 'string') return write(JSON.stringify(part.slice(0, LETTERS_SHOWN * 2 + 2)))
    if (typeof part !== 'object' || part === null) return write(String(part))
    if (depth > 8) return write('…')
    if (Array.isArray(part)) {
      if (!write('[')) return false
      for (const [index, item] of part.entries()) {
        if (index > 0 && !write(',')) return false
        if (!visit(item, depth + 1)) return false
      }
      return write(']')
    }
    if (!write('{')) return false
    let first = true
    for (const key in part) {
      if (!first && !write(',')) return false
      first = false
      if (!visit(key, depth + 1) || !write(':')) return false
      if (!visit((part as Record<string, unknown>)[key], depth + 1)) return false
    }
    return write('}')
  }
  visit(value, 0)
  return shorten(parts.join(''))
}
