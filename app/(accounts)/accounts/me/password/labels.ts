/** The labels of the form, which its problems begin with. */
export const LABELS = {
  oldPassword: 'The password you have now',
  password: 'New password',
  passwordAgain: 'The new password again',
} as const
