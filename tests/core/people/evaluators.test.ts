import { describe, expect, it } from 'vitest'
import { dateOf } from '../../../lib/core/calendar/dates.ts'
import { mayEvaluate, type EvaluationAsked } from '../../../lib/core/people/evaluators.ts'
import { designationSchema, type Designation } from '../../../lib/core/people/people.schema.ts'
import { EditionIndex } from '../../../lib/core/rulebooks/edition-index.ts'
import { edition, rule } from '../rulebooks/sample-edition.ts'

const levels = ['low', 'mid', 'top'].map((level, at) => ({ level, rank: at + 1, name: level }))
const evaluates = (holds: string, recommends: string[]) =>
  rule('evaluator', { id: `evaluator.${holds}`, holds, workKinds: ['bucking'], recommends })
const book = new EditionIndex({
  recordedIn: 1,
  ...edition([evaluates('mid', ['low']), evaluates('top', ['low', 'mid'])], {
    levels: levels.map((level) => (level.level === 'mid' ? { ...level, aliases: ['middle'] } : level)),
  }),
})

function designation(said: Record<string, unknown> = {}): Designation {
  return designationSchema.parse({
    id: 'd',
    recordedIn: 1,
    person: 'eva',
    role: 'evaluator',
    book: 'invented',
    level: 'top',
    workKinds: ['bucking'],
    sawKind: 'crosscut',
    firstDay: '2027-01-01',
    lastDay: '2027-12-31',
    by: 'Invented Official',
    ...said,
  })
}

function ask(said: Partial<EvaluationAsked> = {}, designations: readonly Designation[] = [designation()]) {
  const asked: EvaluationAsked = {
    evaluator: 'eva',
    candidate: 'cal',
    level: 'mid',
    workKind: 'bucking',
    sawKind: 'crosscut',
    day: dateOf('2027-05-03'),
    holds: 'top',
    ...said,
  }
  return mayEvaluate(asked, book, designations)
}
const reasons = (...asked: Parameters<typeof ask>) => {
  const answer = ask(...asked)
  return answer.may ? [] : answer.because.map(({ kind }) => kind)
}

describe('who may evaluate', () => {
  it('[PE7] a designated evaluator of the level: the designation and the rule are named', () => {
    const answer = ask()
    expect(answer.may && [answer.designation, answer.rule.id]).toEqual(['d', 'evaluator.top'])
  })

  it.each([
    ['nobody designated', []],
    ['as instructor', [designation({ role: 'instructor' })]],
    ['by another book', [designation({ book: 'other' })]],
    ['for the other work kind', [designation({ workKinds: ['felling'] })]],
    ['for another saw kind', [designation({ sawKind: 'chain-saw' })]],
    ['another person', [designation({ person: 'eve' })]],
  ])('[PE1] %s', (_, designations) => {
    expect(reasons({}, designations)).toEqual(['not-designated'])
  })

  it.each([
    ['2026-12-31', false],
    ['2027-01-01', true],
    ['2027-12-31', true],
    ['2028-01-01', false],
  ])('[PE1] designated through 2027, on %s', (day, may) => {
    expect(ask({ day: dateOf(day) }).may).toBe(may)
  })

  it('[PE1] a designation without a last day goes on; outside its days its days are told', () => {
    const { lastDay: _, ...open } = designation()
    expect(ask({ day: dateOf('2099-01-01') }, [open]).may).toBe(true)
    expect(ask({ day: dateOf('2026-12-31') }, [open])).toEqual({
      may: false,
      because: [{ kind: 'not-designated-on-day', firstDay: '2027-01-01', designation: 'd' }],
    })
  })

  it('[PE2] designated for a lower level, the same and a higher', () => {
    expect(ask({}, [designation({ level: 'low' })])).toEqual({
      may: false,
      because: [{ kind: 'designated-below', level: 'low', wanted: 'mid', designation: 'd' }],
    })
    expect(ask({}, [designation({ level: 'mid' })]).may).toBe(true)
    expect(ask({}, [designation({ level: 'top' })]).may).toBe(true)
  })

  it('[PE2] of two designations the higher that holds that day counts', () => {
    const past = designation({ id: 'past', lastDay: '2027-02-01' })
    const low = designation({ id: 'low', level: 'low' })
    expect(reasons({}, [past, low])).toEqual(['designated-below'])
    expect(ask({ level: 'low' }, [past, low]).may).toBe(true)
  })

  it('[PE3] holding less than the level, or no card', () => {
    expect(reasons({ holds: 'low' })).toEqual(['holds-below', 'no-evaluator-rule'])
    const answer = mayEvaluate(
      {
        evaluator: 'eva',
        candidate: 'cal',
        level: 'mid',
        workKind: 'bucking',
        sawKind: 'crosscut',
        day: dateOf('2027-05-03'),
      },
      book,
      [designation()],
    )
    expect(answer).toEqual({
      may: false,
      because: [{ kind: 'no-card', workKind: 'bucking', sawKind: 'crosscut' }],
    })
  })

  it('[PE4] the level wanted is not among those that the level held may recommend', () => {
    expect(ask({ holds: 'mid' })).toMatchObject({
      because: [{ kind: 'not-among-recommended', holds: 'mid', recommends: ['low'] }],
    })
    expect(reasons({ level: 'top' })).toEqual(['not-among-recommended'])
    expect(ask({ holds: 'mid', level: 'low' }).may).toBe(true)
  })

  it('[PE4] the book has no evaluator rule for the work kind', () => {
    const both = [designation({ workKinds: ['felling'] })]
    expect(reasons({ workKind: 'felling' }, both)).toEqual(['no-evaluator-rule'])
  })

  it('[PE5] a level by its alias, and one that the edition lacks', () => {
    expect(ask({ level: 'middle' }).may).toBe(true)
    expect(ask({ level: 'low', holds: 'middle' }).may).toBe(true)
    expect(reasons({ level: 'other' })).toEqual(['unknown-level'])
  })

  it('[PE6] nobody evaluates themselves', () => {
    expect(reasons({ candidate: 'eva' })).toEqual(['evaluates-themselves'])
  })

  it('[PE7] all reasons at once', () => {
    expect(reasons({ candidate: 'eva', holds: 'low', level: 'top' }, [])).toEqual([
      'evaluates-themselves',
      'not-designated',
      'holds-below',
      'no-evaluator-rule',
    ])
  })
})
