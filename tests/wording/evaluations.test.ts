import { describe, expect, it } from 'vitest'
import type { LockProblem } from '../../lib/core/evaluations/lock-problems.ts'
import type { RefusedAct } from '../../lib/core/evaluations/refused-acts.ts'
import { lockProblemSentence, refusedActSentence, standstillSentence } from '../../lib/wording/evaluations.ts'

const NAMES = {
  person: (id: string) => ({ 'p-one': 'Evaluator One', 'p-candidate': 'The Candidate' })[id] ?? id,
  item: (id: string) => ({ binds: 'Reading the bind' })[id] ?? id,
}
const evaluator = 'p-one'
const item = 'binds'

/** One of every kind, so that a kind without a row does not compile; each with what its sentence must name. */
const LOCK_ROWS: {
  readonly [Kind in LockProblem['kind']]: [Extract<LockProblem, { kind: Kind }>, ...string[]]
} = {
  'no-mark': [{ kind: 'no-mark', item }, 'Reading the bind'],
  'low-without-words': [
    { kind: 'low-without-words', item, attempt: 2, evaluator, score: 1 },
    ...['Reading the bind', 'attempt 2', 'Evaluator One scored 1'],
  ],
  'not-confirmed': [{ kind: 'not-confirmed', evaluator }, 'Evaluator One'],
  'not-signed': [{ kind: 'not-signed', evaluator }, 'Evaluator One has not signed'],
  'stand-down-unanswered': [{ kind: 'stand-down-unanswered' }, 'stood down'],
  'no-judgement': [{ kind: 'no-judgement' }, 'Points alone pass nobody'],
  'no-recommendation': [{ kind: 'no-recommendation' }, 'recommendation'],
  'level-though-ended': [{ kind: 'level-though-ended', n: 4 }, 'ended'],
  'level-though-critical': [
    { kind: 'level-though-critical', n: 4, item, score: 1 },
    ...['Reading the bind', 'scored 1', 'critical'],
  ],
  'level-without-score': [{ kind: 'level-without-score', n: 4, item }, 'Reading the bind', 'not scored'],
}

const ACT_ROWS: {
  readonly [Kind in RefusedAct['kind']]: [Extract<RefusedAct, { kind: Kind }>, ...string[]]
} = {
  'not-begun': [{ kind: 'not-begun' }, 'has not begun'],
  'begun-already': [{ kind: 'begun-already' }, 'already'],
  'evaluator-is-candidate': [
    { kind: 'evaluator-is-candidate', evaluator: 'p-candidate' },
    'The Candidate is the candidate',
  ],
  'another-edition': [
    { kind: 'another-edition', edition: 'home-0', wanted: 'home-1' },
    'home-0',
    'home-1',
    'stays',
  ],
  'no-evaluator-of-this': [{ kind: 'no-evaluator-of-this', evaluator }, 'Evaluator One'],
  'not-by-the-evaluator': [{ kind: 'not-by-the-evaluator', evaluator }, 'Only Evaluator One'],
  'not-by-the-candidate': [{ kind: 'not-by-the-candidate' }, 'candidate'],
  'no-such-item': [{ kind: 'no-such-item', item }, 'Reading the bind'],
  'no-such-score': [
    { kind: 'no-such-score', score: 5, scale: [0, 1, 2, 3] },
    '5 is no score',
    '0, 1, 2 or 3',
  ],
  'no-such-stop': [{ kind: 'no-such-stop', stop: 'bored' }, 'bored'],
  'too-many-attempts': [{ kind: 'too-many-attempts', attempt: 4, most: 3 }, 'at most 3', 'number 4'],
  'attempt-skipped': [{ kind: 'attempt-skipped', attempt: 3 }, 'Attempt 3', 'attempt 2'],
  ended: [{ kind: 'ended', by: 9 }, 'entry 9'],
  'nothing-to-stand-down-for': [{ kind: 'nothing-to-stand-down-for' }, 'Nothing unsafe'],
  locked: [{ kind: 'locked', by: 7 }, 'entry 7'],
  'not-locked': [{ kind: 'not-locked' }, 'locked'],
  'not-complete': [
    { kind: 'not-complete', problems: [{ kind: 'no-judgement' }, { kind: 'not-signed', evaluator }] },
    ...['cannot be locked yet', 'judgement', 'Evaluator One has not signed'],
  ],
}

describe('what a sheet says', () => {
  it.each(Object.entries(LOCK_ROWS))('[WO46] before it is locked: %s', (_kind, [problem, ...named]) => {
    const said = lockProblemSentence(problem, NAMES)
    for (const each of named) expect(said).toContain(each)
    expect(said).toMatch(/^[A-ZÀ-Ý].*\.$/u)
    expect(said).not.toMatch(/undefined|p-one/)
  })

  it.each(Object.entries(ACT_ROWS))('[WO46] of what cannot be: %s', (_kind, [because, ...named]) => {
    const said = refusedActSentence(because, NAMES)
    for (const each of named) expect(said).toContain(each)
    expect(said).toMatch(/[.]$/)
    expect(said).not.toMatch(/undefined|p-one/)
  })

  it('[WO46] of entries that wait: which one is missing or doubled, and that all are kept', () => {
    expect(standstillSentence({ kind: 'number-missing', n: 12 })).toMatch(/^Entry 12 .*kept\.$/)
    expect(standstillSentence({ kind: 'number-taken', n: 12 })).toMatch(/entry 12 .*kept\.$/)
  })
})
