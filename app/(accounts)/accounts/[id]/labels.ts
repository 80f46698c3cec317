/** The labels of the forms about an account, which their problems begin with. */
export const LABELS = {
  because: 'Why',
  becauseHint: 'It stands in the history of the account, with your name.',
  when: 'When it ends',
  lastDay: 'Last day',
} as const
