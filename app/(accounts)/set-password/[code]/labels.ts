/** The labels of the form, which its problems begin with. */
export const LABELS = {
  password: 'Password',
  passwordAgain: 'The password again',
} as const
