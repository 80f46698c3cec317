/** What keeps a sheet from being locked, each with the item or the person that it leads to. */
export type LockProblem =
  | { kind: 'no-mark'; item: string }
  | { kind: 'low-without-words'; item: string; attempt: number; evaluator: string; score: number }
  | { kind: 'not-confirmed'; evaluator: string }
  | { kind: 'not-signed'; evaluator: string }
  | { kind: 'stand-down-unanswered' }
  | { kind: 'no-judgement' }
  | { kind: 'no-recommendation' }
  | { kind: 'level-though-ended'; n: number }
  | { kind: 'level-though-critical'; n: number; item: string; score: number }
  | { kind: 'level-without-score'; n: number; item: string }
