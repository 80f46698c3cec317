import { COMMON_WORDS, RUNS } from './common.ts'

/** Why a long password is an easy one. */
export type Weakness = 'repeats' | 'run' | 'common' | 'own-words'

/** The shortest run along a row that counts as one. */
const SHORTEST_RUN = 4

/** What must be left of a password after all that is easy in it is taken out. */
const LEAST_LEFT = 6

/**
 * Why a password would be tried early; nothing where it would not. Capitals make no difference. `own` are words that
 * stand beside it: what somebody signs in as, their name, the program's.
 */
export function weaknessOf(password: string, own: readonly string[] = []): Weakness | undefined {
  const letters = password.normalize('NFKC').toLowerCase()
  if (new Set(Array.from(letters)).size < 5 || isRepeated(letters)) return 'repeats'
  if (lengthLeft(withoutRuns(letters)) < LEAST_LEFT) return 'run'
  if (lengthLeft(without(letters, COMMON_WORDS)) < LEAST_LEFT) return 'common'
  const words = own
    .flatMap((text) => text.toLowerCase().split(/[^\p{L}\p{N}]+/u))
    .filter(({ length }) => length > 2)
  if (lengthLeft(without(letters, [...words, ...COMMON_WORDS])) < LEAST_LEFT) return 'own-words'
  return undefined
}

/** One piece over and over, the last one perhaps cut off. */
function isRepeated(letters: string): boolean {
  for (let size = 1; size <= letters.length / 2; size += 1) {
    const piece = letters.slice(0, size)
    if (piece.repeat(Math.ceil(letters.length / size)).startsWith(letters)) return true
  }
  return false
}

/** Digits and signs around a word add little: `password1234567`. */
function lengthLeft(letters: string): number {
  return new Set(Array.from(letters.replace(/[^\p{L}]/gu, ''))).size + (/[^\p{L}]/u.test(letters) ? 1 : 0)
}

function without(letters: string, words: readonly string[]): string {
  return words.reduce((left, word) => left.replaceAll(word, ''), letters)
}

function withoutRuns(letters: string): string {
  let left = letters
  for (const row of RUNS.flatMap((run) => [run, Array.from(run).reverse().join('')])) {
    for (let from = 0; from <= row.length - SHORTEST_RUN; from += 1) {
      for (let to = row.length; to >= from + SHORTEST_RUN; to -= 1)
        left = left.replaceAll(row.slice(from, to), '')
    }
  }
  return left
}
