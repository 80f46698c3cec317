import type { LockProblem } from './lock-problems.ts'

/** Why a command changes nothing; it is kept beside the sheet. */
export type RefusedAct =
  | { kind: 'not-begun' }
  | { kind: 'begun-already' }
  | { kind: 'evaluator-is-candidate'; evaluator: string }
  | { kind: 'another-edition'; edition: string; wanted: string }
  | { kind: 'no-evaluator-of-this'; evaluator: string }
  | { kind: 'not-by-the-evaluator'; evaluator: string }
  | { kind: 'not-by-the-candidate' }
  | { kind: 'no-such-item'; item: string }
  | { kind: 'no-such-score'; score: number; scale: readonly number[] }
  | { kind: 'no-such-stop'; stop: string }
  | { kind: 'too-many-attempts'; attempt: number; most: number }
  | { kind: 'attempt-skipped'; attempt: number }
  | { kind: 'ended'; by: number }
  | { kind: 'nothing-to-stand-down-for' }
  | { kind: 'locked'; by: number }
  | { kind: 'not-locked' }
  | { kind: 'not-complete'; problems: readonly LockProblem[] }
