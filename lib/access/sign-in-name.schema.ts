import { z } from 'zod'

/** What somebody types to say who they are: letters, digits, dots, hyphens and underscores. Capitals make no difference. */
export const signInNameField = z
  .string()
  .trim()
  .toLowerCase()
  .regex(
    /^[a-z0-9][a-z0-9._-]{1,39}$/,
    'a sign-in name is 2 to 40 letters a to z, digits, dots, hyphens and underscores, and begins with a letter or digit',
  )
