/** The labels of the form, which its problems begin with. */
export const LABELS = {
  day: 'The day on which you read the source',
  read: 'What you read',
} as const
