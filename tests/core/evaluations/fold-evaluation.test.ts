import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Act } from '../../../lib/core/evaluations/evaluation-commands.schema.ts'
import { standingMarks } from '../../../lib/core/evaluations/evaluation-state.ts'
import { foldEvaluation, type FoldedEvaluation } from '../../../lib/core/evaluations/fold-evaluation.ts'
import { BEGIN, commandsOf, folded, judge, LOCK, mark, recommend, SHEET, sign } from './evaluation-drafts.ts'

const refusals = ({ state }: FoldedEvaluation) =>
  state.refused.map(({ command, because }) => [command.n, because.kind])
const scores = ({ state }: FoldedEvaluation) =>
  standingMarks(state).map(
    ({ evaluator, item, attempt, score }) => `${evaluator} ${item} ${attempt}: ${score}`,
  )

/** A whole evaluation that can be locked. */
const WHOLE = [
  BEGIN,
  mark('overhead', 1, 2),
  mark('binds', 1, 3),
  sign(),
  judge(),
  recommend('A'),
  LOCK,
] as const

describe('attempts and marks', () => {
  // FS-2300-0052a (v02-2018): up to three attempts, each scored; none is averaged, and a fourth is invalid.
  it('[EV1] of 1, 1 and 2 keep all three, and a fourth is refused', () => {
    const attempts = [1, 1, 2].map((score, at) => mark('binds', at + 1, score, { words: 'Why.' }))
    const made = folded([BEGIN, ...attempts, mark('binds', 4, 3)])
    expect(scores(made)).toEqual(['p-one binds 1: 1', 'p-one binds 2: 1', 'p-one binds 3: 2'])
    expect(refusals(made)).toEqual([[5, 'too-many-attempts']])
  })

  it('[EV1] marked again keep both, and the last one stands', () => {
    const made = folded([BEGIN, mark('binds', 1, 1), mark('binds', 1, 2)])
    expect(made.state.marks.map(({ score }) => score)).toEqual([1, 2])
    expect(scores(made)).toEqual(['p-one binds 1: 2'])
  })

  it('[EV1] of two evaluators stand side by side', () => {
    expect(scores(folded([BEGIN, mark('binds', 1, 1), mark('binds', 1, 3, { evaluator: 'p-two' })]))).toEqual(
      ['p-one binds 1: 1', 'p-two binds 1: 3'],
    )
  })

  it.each([
    ['score 5', mark('binds', 1, 5), 'no-such-score'],
    ['an item of felling', mark('hinge', 1, 2), 'no-such-item'],
    ['the second attempt before the first', mark('binds', 2, 2), 'attempt-skipped'],
    [
      'a mark by somebody who does not evaluate',
      mark('binds', 1, 2, { evaluator: 'p-three' }),
      'no-evaluator-of-this',
    ],
    ['a second beginning', BEGIN, 'begun-already'],
    ['a stop that the sheet does not have', { act: 'stop', attempt: 1, stop: 'bored' }, 'no-such-stop'],
    [
      'standing down for nothing',
      { act: 'stand-down', standDown: true, words: 'Why.' },
      'nothing-to-stand-down-for',
    ],
    [
      'the candidate’s words before it is locked',
      { act: 'candidate-words', says: 'acknowledged' },
      'not-locked',
    ],
  ] satisfies [string, Act, string][])('[EV2] refuse %s, and keep it', (_what, act, kind) => {
    const made = folded([BEGIN, act])
    expect(refusals(made)).toEqual([[2, kind]])
    expect(made.state.refused[0]?.command.does).toEqual(act)
    expect(scores(made)).toEqual([])
  })

  it.each([
    [
      'an evaluator who is the candidate',
      { ...BEGIN, evaluators: ['p-candidate'] },
      'evaluator-is-candidate',
    ],
    ['a sheet of an older edition', { ...BEGIN, edition: 'home-0' }, 'another-edition'],
    ['a mark before the beginning', mark('binds', 1, 2), 'not-begun'],
  ] as [string, Act, string][])('[EV2] refuse %s', (_what, act, kind) => {
    expect(refusals(folded([act]))).toEqual([[1, kind]])
  })
})

describe('stops', () => {
  // R5 field evaluation form, as reported: any violation of safety equipment ends it; here the candidate wore no eye protection.
  it('[EV3] for safety equipment end the evaluation, and ask whether to stand down', () => {
    const stop: Act = { act: 'stop', attempt: 1, stop: 'safety-equipment', words: 'No eye protection.' }
    const attempt: Act = { act: 'attempt', attempt: 2, cut: 'c-2', item: 'A log', complexity: 'least' }
    const marks = [mark('overhead', 1, 3), mark('binds', 1, 3), sign()]
    const made = folded([BEGIN, ...marks, stop, attempt, judge('no'), recommend('A'), LOCK])
    expect(refusals(made)).toEqual([
      [6, 'ended'],
      [9, 'not-complete'],
    ])
    expect(made.state.refused[1]?.because).toMatchObject({
      problems: [{ kind: 'stand-down-unanswered' }, { kind: 'level-though-ended' }],
    })
    const answered: Act = { act: 'stand-down', standDown: false, words: 'Talked through, and put on.' }
    const ended = folded([BEGIN, ...marks, stop, answered, judge('no'), recommend(), LOCK])
    expect(ended.state.locked?.n).toBe(9)
  })

  it('[EV3] for the weather end the attempt alone', () => {
    const stop: Act = { act: 'stop', attempt: 1, stop: 'weather' }
    const attempt: Act = { act: 'attempt', attempt: 2, cut: 'c-2', item: 'A log', complexity: 'least' }
    expect(refusals(folded([BEGIN, stop, attempt]))).toEqual([])
  })

  it('[EV3] walking away is evidence, wants no marks, and fails nobody', () => {
    const away: Act = { act: 'walked-away', attempt: 1, words: 'A dead top above the cut.' }
    expect(refusals(folded([BEGIN, away, judge('not-yet'), recommend(), LOCK]))).toEqual([])
    const scored = [mark('overhead', 1, 3), mark('binds', 1, 2), sign()]
    expect(folded([BEGIN, ...scored, away, judge(), recommend('A'), LOCK]).state.locked).toBeDefined()
    // It fails nobody, and by itself it supports no level.
    expect(folded([BEGIN, away, judge(), recommend('A'), LOCK]).state.refused[0]?.because).toEqual({
      kind: 'not-complete',
      problems: [
        { kind: 'level-without-score', n: 4, item: 'overhead' },
        { kind: 'level-without-score', n: 4, item: 'binds' },
      ],
    })
  })
})

describe('locking', () => {
  const without = (gone: Act, ...more: Act[]) => [
    ...WHOLE.filter((act) => act !== gone && act !== LOCK),
    ...more,
    LOCK,
  ]
  const problems = (acts: Parameters<typeof folded>[0]) => {
    const because = folded(acts).state.refused.at(-1)?.because
    return because?.kind === 'not-complete' ? because.problems : because
  }

  it('[EV4] a whole evaluation locks', () => {
    expect(folded(WHOLE).state.locked).toMatchObject({
      n: 7,
      by: 'p-one',
      statement: 'I saw what stands here.',
    })
  })

  it('[EV4] leads to each mark, signature and judgement that is missing', () => {
    expect(problems(without(WHOLE[2]))).toEqual([{ kind: 'no-mark', item: 'binds' }])
    expect(problems(without(WHOLE[3]))).toEqual([{ kind: 'not-signed', evaluator: 'p-one' }])
    expect(problems(without(WHOLE[4]))).toEqual([{ kind: 'no-judgement' }])
    expect(problems(without(WHOLE[5]))).toEqual([{ kind: 'no-recommendation' }])
  })

  it('[EV4] a mark after the signature wants another, and a low one wants words', () => {
    const low = mark('wedging', 1, 1)
    expect(problems(without(LOCK, low))).toEqual([
      { kind: 'low-without-words', item: 'wedging', attempt: 1, evaluator: 'p-one', score: 1 },
      { kind: 'not-signed', evaluator: 'p-one' },
    ])
    expect(
      folded(without(LOCK, mark('wedging', 1, 1, { words: 'Too late.' }), sign())).state.locked,
    ).toBeDefined()
    // A 0 is no score: it asks for no words.
    expect(folded(without(LOCK, mark('wedging', 1, 0), sign())).state.locked).toBeDefined()
  })

  it('[EV4] a critical item too low on its last attempt holds a level back, and points pass nobody', () => {
    const low = mark('binds', 2, 1, { words: 'Called it the wrong way round.' })
    expect(problems(without(LOCK, low, sign()))).toEqual([
      { kind: 'level-though-critical', n: 6, item: 'binds', score: 1 },
    ])
    expect(folded(without(WHOLE[5], low, sign(), recommend())).state.locked).toBeDefined()
    // The last attempt counts, and not the best.
    expect(folded(without(LOCK, low, mark('binds', 3, 2), sign())).state.locked).toBeDefined()
  })

  it('[EV4] a critical item that was not scored supports no level, and an attempt that was not scored changes none', () => {
    expect(problems(without(WHOLE[2], mark('binds', 1, 0), sign()))).toEqual([
      { kind: 'level-without-score', n: 5, item: 'binds' },
    ])
    expect(folded(without(LOCK, mark('binds', 2, 0), sign())).state.locked).toBeDefined()
  })

  it('[EV5] what another typed wants its evaluator’s word', () => {
    const typed = { by: 'p-clerk', does: mark('wedging', 1, 2) }
    expect(problems([...WHOLE.slice(0, -1), typed, sign(), LOCK])).toEqual([
      { kind: 'not-confirmed', evaluator: 'p-one' },
    ])
    const confirm: Act = { act: 'confirm', evaluator: 'p-one' }
    expect(folded([...WHOLE.slice(0, -1), typed, confirm, sign(), LOCK]).state.locked).toBeDefined()
    expect(refusals(folded([...WHOLE.slice(0, -1), { by: 'p-clerk', does: confirm }]))).toEqual([
      [7, 'not-by-the-evaluator'],
    ])
  })

  it('[EV6] afterwards nothing changes but the candidate’s words', () => {
    const words: Act = { act: 'candidate-words', says: 'disputed', words: 'The second cut was not mine.' }
    const made = folded([...WHOLE, mark('binds', 2, 1), judge('no'), words, { by: 'p-one', does: words }])
    expect(refusals(made)).toEqual([
      [8, 'locked'],
      [9, 'locked'],
      [11, 'not-by-the-candidate'],
    ])
    expect(made.state.candidateWords).toHaveLength(1)
    expect(scores(made)).toEqual(scores(folded(WHOLE)))
  })
})

describe('commands in any order', () => {
  it('[EV7] that are missing one wait after it; two under one number are told, and neither counts', () => {
    const commands = commandsOf(WHOLE)
    const gap = foldEvaluation(
      commands.filter(({ n }) => n !== 3),
      SHEET,
    )
    expect(gap).toMatchObject({ standstill: { kind: 'number-missing', n: 3 } })
    expect(gap.waiting.map(({ n }) => n)).toEqual([4, 5, 6, 7])
    const [other] = commandsOf([mark('binds', 1, 1)])
    if (other === undefined) throw new Error('no command')
    const taken = foldEvaluation([...commands, { ...other, n: 3 }], SHEET)
    expect(taken).toMatchObject({ standstill: { kind: 'number-taken', n: 3 } })
    expect(taken.waiting).toHaveLength(6)
    expect(scores(taken)).toEqual(['p-one overhead 1: 2'])
  })

  const anyAct: fc.Arbitrary<Act> = fc.oneof(
    {
      weight: 6,
      arbitrary: fc
        .tuple(
          fc.constantFrom('overhead', 'binds', 'wedging', 'hinge'),
          fc.integer({ min: 1, max: 4 }),
          fc.integer({ min: 0, max: 4 }),
          fc.constantFrom('p-one', 'p-two', 'p-three'),
          fc.boolean(),
        )
        .map(([item, attempt, score, evaluator, hasWords]) =>
          mark(item, attempt, score, { evaluator, ...(hasWords ? { words: 'Why.' } : {}) }),
        ),
    },
    {
      weight: 3,
      arbitrary: fc.constantFrom(sign(), sign('p-two'), judge(), recommend('A'), recommend(), LOCK),
    },
    {
      weight: 1,
      arbitrary: fc.constantFrom<Act>(
        { act: 'stop', attempt: 1, stop: 'unsafe-act' },
        { act: 'stand-down', standDown: true, words: 'Why.' },
        { act: 'walked-away', attempt: 1, words: 'Why.' },
        { act: 'candidate-words', says: 'acknowledged' },
      ),
    },
  )
  const history = fc.array(anyAct, { maxLength: 40 }).map((acts) => commandsOf([BEGIN, ...acts]))

  it('[EV7] and repeated make the same evaluation', () => {
    const mixed = history.chain((commands) =>
      fc.tuple(
        fc.constant(commands),
        fc.shuffledSubarray(commands, { minLength: commands.length }),
        fc.subarray(commands),
      ),
    )
    fc.assert(
      fc.property(mixed, ([commands, shuffled, again]) => {
        expect(foldEvaluation([...shuffled, ...again], SHEET)).toEqual(foldEvaluation(commands, SHEET))
      }),
    )
  })

  it('[EV8] lose, double and average nothing: every command stands in one place, as it was given', () => {
    fc.assert(
      fc.property(history, (commands) => {
        const { state, waiting } = foldEvaluation(commands, SHEET)
        const { begun, locked, refused, ...lists } = state
        const standing = [
          ...[begun, locked].flatMap((done) => (done === undefined ? [] : [done.n])),
          ...Object.values(lists).flatMap((list) => list.map(({ n }) => n)),
          ...refused.map(({ command }) => command.n),
        ]
        expect(standing.sort((left, right) => left - right)).toEqual(commands.map(({ n }) => n))
        expect(waiting).toEqual([])
        for (const { n, score } of state.marks)
          expect(commands[n - 1]?.does).toMatchObject({ act: 'mark', score })
      }),
    )
  })

  it('[EV6] never change a mark once they have locked', () => {
    fc.assert(
      fc.property(fc.array(anyAct, { maxLength: 20 }), (acts) => {
        const after = folded([...WHOLE, ...acts])
        expect(after.state.marks).toEqual(folded(WHOLE).state.marks)
        expect(after.state.recommendations).toEqual(folded(WHOLE).state.recommendations)
      }),
    )
  })
})
