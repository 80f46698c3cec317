import { joinedByOr } from './lists.ts'

/** Letters whose names begin with a vowel sound, for single-letter levels. */
const SPOKEN_WITH_AN = /^([AEFHILMNORSX]|[AEIOUaeiou].+)$/

/** Levels with the article the first one wants: `a B or C`, `an A`; nobody where the list is empty. */
export function aLevel(levels: readonly string[]): string {
  const first = levels[0]
  if (first === undefined) return 'nobody whom the book names'
  return `${SPOKEN_WITH_AN.test(first) ? 'an' : 'a'} ${joinedByOr(levels)}`
}
