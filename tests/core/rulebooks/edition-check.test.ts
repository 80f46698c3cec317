import { describe, expect, it } from 'vitest'
import { checkEdition, type EditionProblem } from '../../../lib/core/rulebooks/edition-check.ts'
import { AT_MOST_ONCE, REQUIRED_ONCE } from '../../../lib/core/rulebooks/rules.schema.ts'
import { edition, leastRules, rule } from './sample-edition.ts'

const cells = { least: 'independent', moderate: 'none', high: 'none' }
const grant = (level: string, said: Record<string, unknown> = {}) =>
  rule('grant', { id: `grant.${level}`, level, workKind: 'bucking', sawKind: 'crosscut', cells, ...said })
const problems = (more: readonly Record<string, unknown>[], said: Record<string, unknown> = {}) =>
  checkEdition(edition(more, said), ['look-up'])
const kinds = (found: readonly EditionProblem[]) => found.map(({ kind }) => kind)

describe('what an edition must hold', () => {
  it('[RB1] the fewest rules make a whole edition', () => {
    expect(problems([])).toEqual([])
  })

  it.each([...REQUIRED_ONCE, 'age.least'])('[RB1] an edition without %s is told what is missing', (kind) => {
    const rules = leastRules().filter((known) => known['kind'] !== kind)
    expect(problems([], { rules })).toEqual([{ path: ['rules'], kind: 'rule-missing', ruleKind: kind }])
  })

  it.each(REQUIRED_ONCE)('[RB1] an edition with %s twice is told so', (kind) => {
    const again = leastRules().find((known) => known['kind'] === kind) ?? {}
    const at = leastRules().length
    expect(problems([{ ...again, id: 'again' }])).toEqual([
      { path: ['rules', at], kind: 'rule-repeated', ruleKind: kind, rule: 'again' },
    ])
  })

  const figures: Record<string, Record<string, unknown>> = {
    'capacity.outside': { capacities: ['contractor'] },
    agreement: { capacities: ['volunteer'] },
    assignment: { workKinds: ['bucking'], upTo: 'least' },
    'supervision.partner': { workKinds: ['bucking'], complexities: ['least'] },
    decider: { taughtWithinMonths: 12 },
    'card.reconciled': { days: 365 },
    'course.field-groups': { apart: ['bucking', 'felling'] },
    'training-record.kept': { keep: 'latest' },
  }
  it.each(AT_MOST_ONCE)('[RB2] %s stands once and no more', (kind) => {
    const once = rule(kind, figures[kind])
    expect(problems([once])).toEqual([])
    expect(kinds(problems([once, { ...once, id: 'again' }]))).toEqual(['rule-repeated'])
  })
})

describe('names', () => {
  it('[RB3] two rules of one id', () => {
    const found = problems([grant('helper'), grant('master', { id: 'grant.helper' })])
    expect(found).toEqual([{ path: ['rules', 12, 'id'], kind: 'twin-rule', rule: 'grant.helper' }])
  })

  it.each([
    ['two levels of one rank', { level: 'c', rank: 2, name: 'c' }, 'twin-rank', 'rank'],
    ['two levels of one name', { level: 'helper', rank: 3, name: 'c' }, 'twin-level', 'level'],
    ['a level named like an alias', { level: 'hand', rank: 3, name: 'c' }, 'twin-level', 'level'],
  ])('[RB3] %s', (_, third, kind, field) => {
    const levels = [...edition().levels, third]
    expect(problems([], { levels })).toMatchObject([{ kind, path: ['levels', 2, field] }])
  })

  it('[RB3] an alias that is another level', () => {
    const levels = [...edition().levels, { level: 'c', rank: 3, name: 'c', aliases: ['master'] }]
    expect(problems([], { levels })).toEqual([
      { path: ['levels', 2, 'aliases', 0], kind: 'twin-level', level: 'master' },
    ])
  })

  it.each([
    ['a grant', grant('mastr'), ['rules', 11, 'level']],
    [
      'a term',
      rule('term', { levels: ['helper', 'mastr'], term: { years: 1 }, end: 'on-anniversary' }),
      ['rules', 11, 'levels', 1],
    ],
    [
      'an evaluator rule, of who holds it',
      rule('evaluator', { holds: 'mastr', workKinds: ['bucking'], recommends: [] }),
      ['rules', 11, 'holds'],
    ],
    [
      'an evaluator rule, of whom they evaluate',
      rule('evaluator', { holds: 'master', workKinds: ['bucking'], recommends: ['mastr'] }),
      ['rules', 11, 'recommends', 0],
    ],
    [
      'a share of a course',
      rule('course.share', {
        level: 'mastr',
        workKinds: ['bucking'],
        mix: { least: 1, moderate: 0, high: 0 },
      }),
      ['rules', 11, 'level'],
    ],
    [
      'a prerequisite of a card',
      rule('course.prerequisite', {
        workKinds: ['bucking'],
        needs: { need: 'card', levels: ['helper', 'mastr'], endedWithinMonths: 0 },
      }),
      ['rules', 11, 'needs', 'levels', 1],
    ],
  ])('[RB4] an unknown level in %s', (_, named, path) => {
    expect(problems([named])).toMatchObject([
      { kind: 'unknown-level', level: 'mastr', nearest: 'master', path },
    ])
  })

  it('[RB4] an unknown level in the recognition of another book; their levels are not judged', () => {
    const levels = [{ theirs: 'anything', ours: 'zzz' }]
    const books = [{ book: 'other', workKinds: ['bucking'], sawKinds: ['crosscut'], levels }]
    const rules = leastRules().map((known) => (known['kind'] === 'recognition' ? { ...known, books } : known))
    expect(problems([], { rules })).toEqual([
      {
        path: ['rules', 5, 'books', 0, 'levels', 0, 'ours'],
        kind: 'unknown-level',
        rule: 'recognition',
        level: 'zzz',
      },
    ])
  })
})

describe('figures', () => {
  const term = rule('term', { levels: ['helper'], term: { months: 12 }, end: 'on-anniversary' })
  const evaluator = rule('evaluator', { holds: 'master', workKinds: ['felling'], recommends: ['helper'] })
  const certificate = rule('certificate', { subject: 'cpr' })
  it.each([
    ['twin-grant', grant('helper')],
    ['twin-term', term],
    ['twin-evaluator', evaluator],
    ['twin-certificate', certificate],
  ])('[RB5] %s', (kind, one) => {
    expect(problems([one])).toEqual([])
    expect(kinds(problems([one, { ...one, id: 'again' }]))).toEqual([kind])
  })

  it('[RB5] two least ages for one saw kind, and none for two saw kinds', () => {
    const age = rule('age.least', { id: 'again', sawKind: 'crosscut', years: 18 })
    expect(kinds(problems([age]))).toEqual(['twin-least-age'])
    expect(problems([{ ...age, sawKind: 'chain-saw' }])).toEqual([])
  })

  it('[RB6] a last day before the first; the same day is no fault', () => {
    expect(problems([], { lastDay: '2019-12-31' })).toEqual([
      { path: ['lastDay'], kind: 'days-backwards', firstDay: '2020-01-01', lastDay: '2019-12-31' },
    ])
    expect(problems([], { lastDay: '2020-01-01' })).toEqual([])
  })

  it('[RB6] ages that run backwards', () => {
    const figures = { sawKind: 'crosscut', capacities: ['volunteer'], workKinds: ['bucking'], gives: 'none' }
    const ages = (from: number, under: number) => [rule('age.capacity', { ...figures, from, under })]
    expect(kinds(problems(ages(18, 18)))).toEqual(['ages-backwards'])
    expect(problems(ages(17, 18))).toEqual([])
  })

  it.each(['certificate.delivery', 'certificate.seen'])(
    '[RB7] %s of a subject that is not asked for',
    (kind) => {
      expect(problems([certificate, rule(kind, { subjects: ['cpr', 'cprr'] })])).toEqual([
        {
          path: ['rules', 12, 'subjects', 1],
          kind: 'certificate-not-asked-for',
          rule: kind,
          subject: 'cprr',
          nearest: 'cpr',
        },
      ])
    },
  )

  const options = [
    { option: 'no', name: 'no', floor: 'least' },
    { option: 'yes', name: 'yes', floor: 'high' },
  ]
  const factor = (said: Record<string, unknown>) =>
    rule('worksheet.factor', {
      factor: 'lean',
      name: 'Lean',
      workKinds: ['felling'],
      required: true,
      options,
      ...said,
    })
  it('[RB8] a factor twice for a work kind, and once for each of two', () => {
    const both = ['bucking', 'felling']
    expect(kinds(problems([factor({}), factor({ id: 'again', workKinds: both })]))).toEqual(['twin-factor'])
    expect(problems([factor({}), factor({ id: 'again', workKinds: ['bucking'] })])).toEqual([])
  })

  it('[RB8] an option twice in its factor', () => {
    const again = { option: 'no', name: 'no', floor: 'high' }
    expect(problems([factor({ options: [...options, again] })])).toEqual([
      {
        path: ['rules', 11, 'options', 2, 'option'],
        kind: 'twin-option',
        rule: 'worksheet.factor',
        option: 'no',
      },
    ])
  })

  it('[RB9] an unknown caution', () => {
    const shown = { workKinds: ['bucking'], complexities: ['least'], cautions: ['look-up', 'look-upp'] }
    expect(problems([rule('cautions.shown', shown)])).toEqual([
      {
        path: ['rules', 11, 'cautions', 1],
        kind: 'unknown-caution',
        rule: 'cautions.shown',
        caution: 'look-upp',
        nearest: 'look-up',
      },
    ])
  })

  it('[RB10] an edition that recognises its own book', () => {
    const levels = [{ theirs: 'helper', ours: 'helper' }]
    const books = [{ book: 'invented', workKinds: ['bucking'], sawKinds: ['crosscut'], levels }]
    const rules = leastRules().map((known) => (known['kind'] === 'recognition' ? { ...known, books } : known))
    expect(kinds(problems([], { rules }))).toEqual(['recognises-itself'])
  })

  const module = (of: string) =>
    rule('course.module', {
      id: `module.${of}`,
      module: of,
      name: of,
      workKinds: ['bucking'],
      setting: 'classroom',
    })
  const size = (limit: string, workKinds: string[]) =>
    rule('course.size', { id: `size.${limit}.${workKinds.join('.')}`, limit, workKinds, count: 8 })
  const both = ['bucking', 'felling']
  it.each([
    ['twin-size', size('on-roster', both), size('on-roster', ['felling']), size('per-item', ['felling'])],
    [
      'twin-field-days',
      rule('course.field-days', { workKinds: both, days: 1 }),
      rule('course.field-days', { id: 'again', workKinds: ['felling'], days: 2 }),
      size('per-item', both),
    ],
    [
      'twin-share',
      ...['bucking', 'bucking', 'felling'].map((kind, at) =>
        rule('course.share', {
          id: `share.${at}`,
          level: 'helper',
          workKinds: [kind],
          mix: { least: 1, moderate: 0, high: 0 },
        }),
      ),
    ],
    ['twin-module', module('saws'), { ...module('saws'), id: 'again' }, module('binds')],
    [
      'twin-training-record',
      ...['taught-here', 'taught-here', 'prior-training'].map((basis, at) =>
        rule('training-record', { id: `record.${at}`, basis, holds: ['identity'], signedBy: ['employer'] }),
      ),
    ],
  ] as [string, ...Record<string, unknown>[]][])('[RB40] %s', (kind, one = {}, twin = {}, other = {}) => {
    expect(problems([one, other])).toEqual([])
    expect(kinds(problems([one, twin]))).toEqual([kind])
  })

  it('[RB41] a prerequisite of a module that the edition does not state', () => {
    const needs = { need: 'modules', modules: ['saws', 'sawss'] }
    expect(
      problems([module('saws'), rule('course.prerequisite', { workKinds: ['bucking'], needs })]),
    ).toEqual([
      {
        path: ['rules', 12, 'needs', 'modules', 1],
        kind: 'unknown-module',
        rule: 'course.prerequisite',
        module: 'sawss',
        nearest: 'saws',
      },
    ])
  })

  it('[RB11] all problems at once', () => {
    const found = problems([grant('a1'), grant('b1')], { lastDay: '2019-01-01' })
    expect(kinds(found)).toEqual(['days-backwards', 'unknown-level', 'unknown-level'])
  })
})
