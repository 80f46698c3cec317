import { z } from 'zod'

/** How many characters a sign-in name has at most. */
export const MOST_IN_NAME = 40

/** What somebody types to say who they are: letters, digits, dots, hyphens and underscores. Capitals make no difference. */
export const signInNameField = z
  .string()
  .trim()
  .toLowerCase()
  .regex(
    /^[a-z0-9][a-z0-9._-]{1,39}$/,
    `a sign-in name is 2 to ${MOST_IN_NAME} letters a to z, digits, dots, hyphens and underscores, and begins with a letter or digit`,
  )

/** A name under which somebody tries to sign in; whether it is anybody's is found with the password alone. */
export const givenNameField = z
  .string()
  .trim()
  .toLowerCase()
  .max(MOST_IN_NAME, `a sign-in name has at most ${MOST_IN_NAME} characters`)
