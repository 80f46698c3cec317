/** The labels of the form, which its problems begin with. */
export const LABELS = {
  name: 'Your name',
  signInName: 'Sign-in name',
  password: 'Password',
  passwordAgain: 'The password again',
  'program.name': 'Name of the program',
  'program.timeZone': 'Time zone',
  'program.book': 'The rule book in force',
} as const
