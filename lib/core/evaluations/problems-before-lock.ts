import type { LockProblem } from './lock-problems.ts'
import { isConfirmed, standingMarks, type Done, type EvaluationState } from './evaluation-state.ts'
import type { Sheet, SheetItem } from './sheet.ts'

/**
 * What is missing before a sheet can be locked, item by item. A critical item wants a mark, unless the evaluation ended or
 * the candidate walked away; a low score wants words; marks that another typed want their evaluator's word, and everybody
 * who marked signs. A level cannot be recommended after an evaluation that ended, or where a critical item was not
 * scored or its last attempt is too low: points alone pass nobody, and they can hold somebody back.
 */
export function problemsBeforeLock(state: EvaluationState, sheet: Sheet): readonly LockProblem[] {
  const { begun, stops, standDowns, judgements, recommendations, walkedAway } = state
  if (begun === undefined) return []
  const marks = standingMarks(state)
  const ends = stops.filter(({ stop }) => stopOf(sheet, stop)?.ends === 'evaluation')
  const isOver = ends.length > 0 || walkedAway.length > 0
  const critical = sheet.items.filter((item) => item.critical && item.workKinds.includes(begun.workKind))
  const evaluators = [...new Set(marks.map(({ evaluator }) => evaluator))]
  const lastLevel = recommendations.at(-1)
  return [
    ...critical
      .filter((item) => !isOver && !marks.some((mark) => mark.item === item.id))
      .map(({ id }): LockProblem => ({ kind: 'no-mark', item: id })),
    ...marks
      .filter(
        ({ score, words }) =>
          isCounted(sheet, score) && score <= sheet.critical.answered && words === undefined,
      )
      .map(({ item, attempt, evaluator, score }): LockProblem => ({
        kind: 'low-without-words',
        ...{ item, attempt, evaluator, score },
      })),
    ...evaluators
      .filter((evaluator) => marks.some((mark) => mark.evaluator === evaluator && !isConfirmed(mark, state)))
      .map((evaluator): LockProblem => ({ kind: 'not-confirmed', evaluator })),
    ...evaluators
      .filter((evaluator) => !hasSigned(evaluator, state))
      .map((evaluator): LockProblem => ({ kind: 'not-signed', evaluator })),
    ...(ends.some(({ stop }) => stopOf(sheet, stop)?.unsafe === true) && standDowns.length === 0
      ? [{ kind: 'stand-down-unanswered' } as const]
      : []),
    ...(judgements.length === 0 ? [{ kind: 'no-judgement' } as const] : []),
    ...(lastLevel === undefined ? [{ kind: 'no-recommendation' } as const] : []),
    ...(lastLevel?.level === undefined
      ? []
      : [
          ...(ends.length > 0 ? [{ kind: 'level-though-ended', n: lastLevel.n } as const] : []),
          ...critical
            .filter(({ id }) => isOver || marks.some((mark) => mark.item === id))
            .flatMap((item) => heldBack(item, marks, sheet, lastLevel.n)),
        ]),
  ]
}

type Marks = readonly Done<'mark'>[]

/**
 * What of a critical item holds a level back: each evaluator's last attempt that was scored counts by itself, since two of
 * them are never averaged; an item that nobody scored supports no level.
 */
function heldBack(item: SheetItem, marks: Marks, sheet: Sheet, n: number): LockProblem[] {
  const ofItem = marks.filter((mark) => mark.item === item.id)
  const scored = ofItem.filter(({ score }) => isCounted(sheet, score))
  if (scored.length === 0) return [{ kind: 'level-without-score', n, item: item.id }]
  return scored
    .filter(({ evaluator, attempt }) =>
      scored.every((other) => other.evaluator !== evaluator || other.attempt <= attempt),
    )
    .filter(({ score }) => score < sheet.critical.least)
    .map(({ score }) => ({ kind: 'level-though-critical', n, item: item.id, score }))
}

/** Signed after the last mark of one's own. */
function hasSigned(evaluator: string, { marks, signed }: EvaluationState): boolean {
  const last = Math.max(0, ...marks.filter((mark) => mark.evaluator === evaluator).map(({ n }) => n))
  return signed.some((done) => done.evaluator === evaluator && done.n > last)
}

function isCounted(sheet: Sheet, score: number): boolean {
  return sheet.scale.some((step) => step.score === score && !step.missing)
}

/** The stop of a sheet under an id. */
export function stopOf({ stops }: Sheet, id: string) {
  return stops.find((stop) => stop.id === id)
}
