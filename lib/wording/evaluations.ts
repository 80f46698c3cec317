import type { Standstill } from '../core/evaluations/fold-evaluation.ts'
import type { LockProblem } from '../core/evaluations/lock-problems.ts'
import type { RefusedAct } from '../core/evaluations/refused-acts.ts'
import { joinedByOr } from './lists.ts'

/** How people and the items of a sheet are called; both take an id. */
export type SheetNames = { person: (id: string) => string; item: (id: string) => string }

/** What is missing before a sheet is locked, with the item or the person that it leads to. */
export function lockProblemSentence(problem: LockProblem, { person, item }: SheetNames): string {
  switch (problem.kind) {
    case 'no-mark':
      return `${item(problem.item)}: not marked. A critical item wants a score, or a 0 where it was not evaluated.`
    case 'low-without-words':
      return `${item(problem.item)}, attempt ${problem.attempt}: ${person(problem.evaluator)} scored ${problem.score}. Say in words what was missing.`
    case 'not-confirmed':
      return `${person(problem.evaluator)} has not confirmed the marks that somebody else typed for them.`
    case 'not-signed':
      return `${person(problem.evaluator)} has not signed since their last mark.`
    case 'stand-down-unanswered':
      return 'The evaluation ended for something unsafe. Say whether anybody is stood down, and why.'
    case 'no-judgement':
      return 'No overall judgement stands here. Points alone pass nobody.'
    case 'no-recommendation':
      return 'No recommendation stands here. That no card is recommended is one too.'
    case 'level-though-ended':
      return 'A level is recommended, and the evaluation ended before its end. Recommend none, or evaluate again.'
    case 'level-though-critical':
      return `A level is recommended, and the last attempt of “${item(problem.item)}” was scored ${problem.score}. It is critical. Recommend none, or score another attempt.`
    case 'level-without-score':
      return `A level is recommended, and “${item(problem.item)}” was not scored. It is critical. Recommend none, or score it.`
  }
}

/** Why something done to a sheet changes nothing. */
export function refusedActSentence(because: RefusedAct, names: SheetNames): string {
  const { person, item } = names
  switch (because.kind) {
    case 'not-begun':
      return 'This evaluation has not begun: nobody has said who is evaluated, for what, and by whom.'
    case 'begun-already':
      return 'This evaluation has begun already.'
    case 'evaluator-is-candidate':
      return `${person(because.evaluator)} is the candidate, and evaluates nobody here.`
    case 'another-edition':
      return `The sheet is of the edition “${because.edition}”, and this one is of “${because.wanted}”. Begin again on this sheet; what was scored on the other stays there.`
    case 'no-evaluator-of-this':
      return `${person(because.evaluator)} is no evaluator of this sheet.`
    case 'not-by-the-evaluator':
      return `Only ${person(because.evaluator)} can do that for themselves.`
    case 'not-by-the-candidate':
      return 'Only the candidate says this.'
    case 'no-such-item':
      return `“${item(because.item)}” is no item of this sheet for this work.`
    case 'no-such-score':
      return `${because.score} is no score of the scale. There are ${joinedByOr(because.scale.map(String))}.`
    case 'no-such-stop':
      return `“${because.stop}” is none of the stops of this sheet.`
    case 'too-many-attempts':
      return `There are at most ${because.most} attempts; this is number ${because.attempt}.`
    case 'attempt-skipped':
      return `Attempt ${because.attempt} is scored after attempt ${because.attempt - 1}.`
    case 'ended':
      return `The evaluation ended with entry ${because.by} of the sheet. No attempt comes after it.`
    case 'nothing-to-stand-down-for':
      return 'Nothing unsafe stands on this sheet, so nobody is stood down by it.'
    case 'locked':
      return `The sheet was locked with its entry ${because.by}. Nothing on it changes; another sheet can replace it.`
    case 'not-locked':
      return 'The candidate’s words follow once the sheet is locked.'
    case 'not-complete':
      return `The sheet cannot be locked yet. ${because.problems.map((problem) => lockProblemSentence(problem, names)).join(' ')}`
  }
}

/** What keeps entries of a sheet waiting. */
export function standstillSentence({ kind, n }: Standstill): string {
  return kind === 'number-missing'
    ? `Entry ${n} of the sheet has not arrived. What follows it waits, and is kept.`
    : `Two devices wrote different things as entry ${n} of the sheet. Neither counts until somebody says which; all are kept.`
}
