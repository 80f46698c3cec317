import { z } from 'zod'

/** A password stands alone, so it is long; any characters, a paste as good as typing. */
export const LEAST_LETTERS = 15
const MOST_LETTERS = 256

/** A password that somebody chooses. */
export const newPasswordField = z
  .string()
  .min(LEAST_LETTERS, `a password has at least ${LEAST_LETTERS} characters; a short sentence is a good one`)
  .max(MOST_LETTERS, `a password has at most ${MOST_LETTERS} characters`)
  .refine(
    (password) => new Set(Array.from(password)).size > 4,
    'a password needs more than four different characters',
  )

/** A password that somebody gives; whether it is right is found by its hash alone. */
export const givenPasswordField = z
  .string()
  .max(MOST_LETTERS, `a password has at most ${MOST_LETTERS} characters`)
