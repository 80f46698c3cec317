import { dateOf } from '../../../lib/core/calendar/dates.ts'
import {
  evaluationCommandSchema,
  type Act,
  type EvaluationCommand,
} from '../../../lib/core/evaluations/evaluation-commands.schema.ts'
import { foldEvaluation } from '../../../lib/core/evaluations/fold-evaluation.ts'
import type { Sheet } from '../../../lib/core/evaluations/sheet.ts'

/** A small sheet: the published scale with 0 as missing, three attempts, two critical items of bucking and one of felling. */
export const SHEET: Sheet = {
  edition: 'home-1',
  scale: [
    { score: 0, missing: true },
    { score: 1, missing: false },
    { score: 2, missing: false },
    { score: 3, missing: false },
  ],
  attempts: 3,
  items: [
    { id: 'overhead', workKinds: ['bucking', 'felling'], critical: true },
    { id: 'binds', workKinds: ['bucking'], critical: true },
    { id: 'wedging', workKinds: ['bucking'], critical: false },
    { id: 'hinge', workKinds: ['felling'], critical: true },
  ],
  critical: { least: 2, answered: 1 },
  stops: [
    { id: 'unsafe-act', ends: 'evaluation', unsafe: true },
    { id: 'safety-equipment', ends: 'evaluation', unsafe: true },
    { id: 'weather', ends: 'attempt', unsafe: false },
  ],
}

export const BEGIN: Act = {
  act: 'begin',
  candidate: 'p-candidate',
  workKind: 'bucking',
  sawKind: 'crosscut',
  level: 'A',
  edition: 'home-1',
  place: 'An invented place',
  day: dateOf('2027-04-25'),
  evaluators: ['p-one', 'p-two'],
}

/** Who gives an act where nobody else is said: its evaluator, the candidate, or the first evaluator. */
function authorOf(does: Act): string {
  if (does.act === 'candidate-words') return 'p-candidate'
  return 'evaluator' in does ? does.evaluator : 'p-one'
}

/** Acts as the commands of one sheet, numbered from 1; `by` says who gave one where that matters. */
export function commandsOf(acts: readonly (Act | { by: string; does: Act })[]): EvaluationCommand[] {
  return acts.map((given, index) => {
    const does = 'does' in given ? given.does : given
    const by = 'does' in given ? given.by : authorOf(does)
    return evaluationCommandSchema.parse({
      ...{ sheet: 'sheet-1', n: index + 1, by, at: '2027-04-25T15:00:00Z' },
      does,
    })
  })
}

/** What acts make of a sheet. */
export const folded = (acts: readonly (Act | { by: string; does: Act })[], sheet = SHEET) =>
  foldEvaluation(commandsOf(acts), sheet)

/** A mark, by the first evaluator where no other is said. */
export function mark(
  item: string,
  attempt: number,
  score: number,
  more: { evaluator?: string; words?: string } = {},
): Act {
  return { act: 'mark', evaluator: 'p-one', item, attempt, score, ...more }
}

export const sign = (evaluator = 'p-one'): Act => ({ act: 'sign', evaluator })
export const judge = (judgement: 'yes' | 'not-yet' | 'no' = 'yes'): Act => ({
  act: 'judge',
  evaluator: 'p-one',
  judgement,
  words: 'Reads a log before touching it.',
})
export const recommend = (level?: string): Act => ({
  act: 'recommend',
  evaluator: 'p-one',
  restrictions: [],
  ...(level === undefined ? {} : { level }),
})
export const LOCK: Act = { act: 'lock', statement: 'I saw what stands here.' }
