import type { EvaluationCommand } from './evaluation-commands.schema.ts'
import { EMPTY_STATE, type EvaluationState } from './evaluation-state.ts'
import { canonicalJson } from '../kernel/canonical-json.ts'
import { problemsBeforeLock, stopOf } from './problems-before-lock.ts'
import type { RefusedAct } from './refused-acts.ts'
import type { Sheet } from './sheet.ts'

/** What keeps commands from being applied: two that say different things under one number, or a number that is missing. */
export type Standstill = { kind: 'number-taken'; n: number } | { kind: 'number-missing'; n: number }

/** The evaluation that commands make, and what waits behind which standstill. */
export type FoldedEvaluation = {
  state: EvaluationState
  standstill?: Standstill
  waiting: readonly EvaluationCommand[]
}

/**
 * Makes an evaluation of the commands of one sheet, in whatever order they came and however often. They are applied by
 * their numbers; where two differ under one number, or one is missing, those before it count and those after it wait.
 * A command that cannot be is kept with its reason, and changes nothing.
 */
export function foldEvaluation(commands: readonly EvaluationCommand[], sheet: Sheet): FoldedEvaluation {
  const byNumber = new Map<number, Map<string, EvaluationCommand>>()
  for (const command of commands) {
    const same = byNumber.get(command.n) ?? new Map<string, EvaluationCommand>()
    byNumber.set(command.n, same.set(canonicalJson(command), command))
  }
  const last = Math.max(0, ...byNumber.keys())
  let state = EMPTY_STATE
  for (let n = 1; n <= last; n += 1) {
    const [command, other] = [...(byNumber.get(n)?.values() ?? [])]
    if (command === undefined || other !== undefined)
      return {
        state,
        standstill: { kind: command === undefined ? 'number-missing' : 'number-taken', n },
        waiting: waitingFrom(n, byNumber),
      }
    state = applied(state, command, sheet)
  }
  return { state, waiting: [] }
}

function waitingFrom(
  first: number,
  byNumber: ReadonlyMap<number, ReadonlyMap<string, EvaluationCommand>>,
): readonly EvaluationCommand[] {
  return [...byNumber.entries()]
    .filter(([n]) => n >= first)
    .sort(([left], [right]) => left - right)
    .flatMap(([, same]) =>
      [...same.entries()].sort(([left], [right]) => (left < right ? -1 : 1)).map(([, command]) => command),
    )
}

function applied(state: EvaluationState, command: EvaluationCommand, sheet: Sheet): EvaluationState {
  const because = refusalOf(state, command, sheet)
  if (because !== undefined) return { ...state, refused: [...state.refused, { command, because }] }
  const { n, by, does } = command
  const done = { n, by }
  switch (does.act) {
    case 'begin':
      return { ...state, begun: { ...done, ...does } }
    case 'size-up':
      return { ...state, sizeUps: [...state.sizeUps, { ...done, ...does }] }
    case 'plan':
      return { ...state, plans: [...state.plans, { ...done, ...does }] }
    case 'attempt':
      return { ...state, attempts: [...state.attempts, { ...done, ...does }] }
    case 'mark':
      return { ...state, marks: [...state.marks, { ...done, ...does }] }
    case 'confirm':
      return { ...state, confirmed: [...state.confirmed, { ...done, ...does }] }
    case 'sign':
      return { ...state, signed: [...state.signed, { ...done, ...does }] }
    case 'stop':
      return { ...state, stops: [...state.stops, { ...done, ...does }] }
    case 'walked-away':
      return { ...state, walkedAway: [...state.walkedAway, { ...done, ...does }] }
    case 'stand-down':
      return { ...state, standDowns: [...state.standDowns, { ...done, ...does }] }
    case 'stump':
      return { ...state, stumps: [...state.stumps, { ...done, ...does }] }
    case 'log':
      return { ...state, logs: [...state.logs, { ...done, ...does }] }
    case 'judge':
      return { ...state, judgements: [...state.judgements, { ...done, ...does }] }
    case 'recommend':
      return { ...state, recommendations: [...state.recommendations, { ...done, ...does }] }
    case 'lock':
      return { ...state, locked: { ...done, ...does } }
    case 'candidate-words':
      return { ...state, candidateWords: [...state.candidateWords, { ...done, ...does }] }
  }
}

/** Why a command cannot be applied to a sheet as it stands; nothing where it can. */
function refusalOf(
  state: EvaluationState,
  { by, does }: EvaluationCommand,
  sheet: Sheet,
): RefusedAct | undefined {
  const { begun, locked } = state
  if (does.act === 'begin') {
    if (begun !== undefined) return { kind: 'begun-already' }
    if (does.edition !== sheet.edition)
      return { kind: 'another-edition', edition: does.edition, wanted: sheet.edition }
    return does.evaluators.includes(does.candidate)
      ? { kind: 'evaluator-is-candidate', evaluator: does.candidate }
      : undefined
  }
  if (begun === undefined) return { kind: 'not-begun' }
  if (does.act === 'candidate-words') {
    if (locked === undefined) return { kind: 'not-locked' }
    return by === begun.candidate ? undefined : { kind: 'not-by-the-candidate' }
  }
  if (locked !== undefined) return { kind: 'locked', by: locked.n }
  if ('evaluator' in does && !begun.evaluators.includes(does.evaluator))
    return { kind: 'no-evaluator-of-this', evaluator: does.evaluator }
  switch (does.act) {
    case 'confirm':
    case 'sign':
    case 'judge':
    case 'recommend':
      return by === does.evaluator ? undefined : { kind: 'not-by-the-evaluator', evaluator: does.evaluator }
    case 'mark':
      return refusalOfMark(state, does, sheet)
    case 'attempt':
    case 'walked-away':
      return refusalOfAttempt(state, does.attempt, sheet)
    case 'stop':
      if (stopOf(sheet, does.stop) === undefined) return { kind: 'no-such-stop', stop: does.stop }
      return refusalOfAttempt(state, does.attempt, sheet)
    case 'stand-down':
      return state.stops.some(({ stop }) => stopOf(sheet, stop)?.unsafe === true)
        ? undefined
        : { kind: 'nothing-to-stand-down-for' }
    case 'lock': {
      if (!begun.evaluators.includes(by)) return { kind: 'no-evaluator-of-this', evaluator: by }
      const problems = problemsBeforeLock(state, sheet)
      return problems.length === 0 ? undefined : { kind: 'not-complete', problems }
    }
    case 'size-up':
    case 'plan':
    case 'stump':
    case 'log':
      return undefined
  }
}

function refusalOfMark(
  state: EvaluationState,
  { evaluator, item, attempt, score }: { evaluator: string; item: string; attempt: number; score: number },
  sheet: Sheet,
): RefusedAct | undefined {
  const { begun, marks } = state
  const isOfSheet = sheet.items.some(
    ({ id, workKinds }) => id === item && begun !== undefined && workKinds.includes(begun.workKind),
  )
  if (!isOfSheet) return { kind: 'no-such-item', item }
  if (!sheet.scale.some((step) => step.score === score))
    return { kind: 'no-such-score', score, scale: sheet.scale.map((step) => step.score) }
  if (attempt > sheet.attempts) return { kind: 'too-many-attempts', attempt, most: sheet.attempts }
  const hasBefore = marks.some(
    (mark) => mark.evaluator === evaluator && mark.item === item && mark.attempt === attempt - 1,
  )
  return attempt === 1 || hasBefore ? undefined : { kind: 'attempt-skipped', attempt }
}

/** An attempt is among those that the sheet has, and none begins after the evaluation ended. */
function refusalOfAttempt({ stops }: EvaluationState, attempt: number, sheet: Sheet): RefusedAct | undefined {
  const end = stops.find(({ stop }) => stopOf(sheet, stop)?.ends === 'evaluation')
  if (end !== undefined) return { kind: 'ended', by: end.n }
  return attempt > sheet.attempts ? { kind: 'too-many-attempts', attempt, most: sheet.attempts } : undefined
}
