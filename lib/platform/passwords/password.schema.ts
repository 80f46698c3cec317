import { z } from 'zod'
import { weaknessOf, type Weakness } from './weakness.ts'

/** A password stands alone, so it is long; any characters, a paste as good as typing. */
export const LEAST_LETTERS = 15
const MOST_LETTERS = 256

/** What is said of an easy password. */
export const WEAK: Record<Weakness, string> = {
  repeats: 'this password repeats itself; choose one that does not, a short sentence for example',
  run: 'this password runs along the keyboard or the alphabet; a short sentence is a better one',
  common: 'this password is made of words that are tried first; a short sentence is a better one',
  'own-words': 'this password is made of words that stand beside it; choose others',
}

/** A password that somebody chooses. */
export const newPasswordField = z
  .string()
  .min(LEAST_LETTERS, `a password has at least ${LEAST_LETTERS} characters; a short sentence is a good one`)
  .max(MOST_LETTERS, `a password has at most ${MOST_LETTERS} characters`)
  .refine((password) => weaknessOf(password) === undefined, {
    error: ({ input }) => WEAK[weaknessOf(String(input)) ?? 'common'],
    // What is too short is told as that.
    when: ({ issues }) => issues.length === 0,
  })

/** A password that somebody gives; whether it is right is found by its hash alone. */
export const givenPasswordField = z
  .string()
  .max(MOST_LETTERS, `a password has at most ${MOST_LETTERS} characters`)
