import type { Act, ActOf, EvaluationCommand } from './evaluation-commands.schema.ts'
import type { RefusedAct } from './refused-acts.ts'

/** Something that was done to a sheet, with its number and who gave it. */
export type Done<Kind extends Act['act']> = { n: number; by: string } & ActOf<Kind>

/** An evaluation as its commands make it: every act is kept, in the order of its number. */
export type EvaluationState = {
  begun?: Done<'begin'>
  /** Before the cut, and for each of them who said it. */
  sizeUps: readonly Done<'size-up'>[]
  plans: readonly Done<'plan'>[]
  attempts: readonly Done<'attempt'>[]
  /** All marks that were ever given; of one evaluator, item and attempt the last one stands. */
  marks: readonly Done<'mark'>[]
  confirmed: readonly Done<'confirm'>[]
  signed: readonly Done<'sign'>[]
  stops: readonly Done<'stop'>[]
  walkedAway: readonly Done<'walked-away'>[]
  /** Whether somebody is stood down after an unsafe act; the last answer stands. */
  standDowns: readonly Done<'stand-down'>[]
  stumps: readonly Done<'stump'>[]
  logs: readonly Done<'log'>[]
  judgements: readonly Done<'judge'>[]
  recommendations: readonly Done<'recommend'>[]
  locked?: Done<'lock'>
  candidateWords: readonly Done<'candidate-words'>[]
  /** What could not be done, with its reason; it is kept too. */
  refused: readonly { command: EvaluationCommand; because: RefusedAct }[]
}

/** A sheet to which nothing was done. */
export const EMPTY_STATE: EvaluationState = {
  sizeUps: [],
  plans: [],
  attempts: [],
  marks: [],
  confirmed: [],
  signed: [],
  stops: [],
  walkedAway: [],
  standDowns: [],
  stumps: [],
  logs: [],
  judgements: [],
  recommendations: [],
  candidateWords: [],
  refused: [],
}

/** The marks that stand: of each evaluator, item and attempt the last that was given, in the order of their numbers. */
export function standingMarks({ marks }: Pick<EvaluationState, 'marks'>): readonly Done<'mark'>[] {
  return marks.filter(
    (mark) =>
      !marks.some(
        (later) =>
          later.n > mark.n &&
          later.evaluator === mark.evaluator &&
          later.item === mark.item &&
          later.attempt === mark.attempt,
      ),
  )
}

/** Whether a mark that somebody else typed was confirmed by its evaluator since. */
export function isConfirmed({ n, by, evaluator }: Done<'mark'>, { confirmed }: EvaluationState): boolean {
  return by === evaluator || confirmed.some((done) => done.evaluator === evaluator && done.n > n)
}
