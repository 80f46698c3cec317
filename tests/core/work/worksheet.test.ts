import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Rule } from '../../../lib/core/rulebooks/rules.schema.ts'
import { COMPLEXITIES, WORK_KINDS, type Complexity } from '../../../lib/core/rulebooks/words.ts'
import { worksheetFileSchema } from '../../../lib/core/work/worksheet-file.schema.ts'
import { rateWorksheet, type WorksheetRating } from '../../../lib/core/work/worksheet.ts'
import { shippedBookFiles } from '../../builders/shipped-book-files.ts'
import { RUNS } from '../../property-runs.ts'
import { edition, rule } from '../rulebooks/sample-edition.ts'

const options = COMPLEXITIES.map((floor) => ({ option: `o-${floor}`, name: floor, floor }))
const factor = (name: string, said: Record<string, unknown> = {}) =>
  rule('worksheet.factor', {
    id: `factor.${name}`,
    factor: name,
    name,
    workKinds: ['felling'],
    required: true,
    options,
    ...said,
  })
const stacking = rule('worksheet.stacking', { count: 3, of: 'moderate', make: 'high' })
const invented = edition([
  factor('a'),
  factor('b'),
  factor('c'),
  factor('d', { required: false }),
  factor('log', { workKinds: ['bucking'] }),
  stacking,
]).rules

function rate(observations: Record<string, string>, rules: readonly Rule[] = invented): WorksheetRating {
  const read = rateWorksheet(rules, 'felling', observations)
  if (!read.ok) throw new Error(JSON.stringify(read.problem))
  return read.value
}
const seen = (a: Complexity, b: Complexity, c: Complexity, d?: Complexity) => ({
  a: `o-${a}`,
  b: `o-${b}`,
  c: `o-${c}`,
  ...(d === undefined ? {} : { d: `o-${d}` }),
})
const problemsOf = (observations: Record<string, string>, rules: readonly Rule[] = invented) => {
  const read = rateWorksheet(rules, 'felling', observations)
  return read.ok ? [] : read.problem
}

describe('the complexity', () => {
  it.each([
    ['all least', seen('least', 'least', 'least'), 'least'],
    ['one moderate', seen('least', 'moderate', 'least'), 'moderate'],
    ['one high', seen('least', 'moderate', 'high'), 'high'],
  ] as const)('[WK1] %s', (_, observations, complexity) => {
    expect(rate(observations).complexity).toBe(complexity)
  })

  it('[WK2] two moderates stay moderate, three make high', () => {
    expect(rate(seen('moderate', 'moderate', 'least')).complexity).toBe('moderate')
    const three = rate(seen('moderate', 'moderate', 'moderate'))
    expect(three.complexity).toBe('high')
    expect(three.madeByFactors).toEqual([])
    expect(three.madeByStacking.map(({ rule: { id }, factors }) => [id, factors.length])).toEqual([
      ['worksheet.stacking', 3],
    ])
  })

  it('[WK2] a factor of another class does not count, and what a stacking makes does not stack again', () => {
    expect(rate(seen('moderate', 'moderate', 'high')).stacked).toEqual([])
    const least = rule('worksheet.stacking', { id: 'stack.least', count: 2, of: 'least', make: 'moderate' })
    const rules = edition([factor('a'), factor('b'), factor('c'), factor('d'), stacking, least]).rules
    const rating = rate(seen('least', 'least', 'moderate', 'moderate'), rules)
    expect(rating.complexity).toBe('moderate')
    expect(rating.stacked.map(({ rule: { id } }) => id)).toEqual(['stack.least'])
  })

  it('[WK3] what is missing leaves it not rated, and is named', () => {
    const rating = rate({ b: 'o-moderate' })
    expect(rating.complexity).toBe('not-rated')
    expect(rating.missing.map((known) => known.factor)).toEqual(['a', 'c'])
    expect([rating.madeByFactors, rating.madeByStacking]).toEqual([[], []])
    expect(rate({}).complexity).toBe('not-rated')
  })

  it('[WK3] unless the others make it high, by a factor or by stacking', () => {
    expect(rate({ a: 'o-high' }).complexity).toBe('high')
    const stackedHigh = rate({ a: 'o-moderate', b: 'o-moderate', d: 'o-moderate' })
    expect([stackedHigh.complexity, stackedHigh.missing.length]).toEqual(['high', 1])
  })

  it('[WK4] a factor that is not required', () => {
    expect(rate(seen('least', 'least', 'least')).missing).toEqual([])
    expect(rate(seen('least', 'least', 'least', 'moderate')).complexity).toBe('moderate')
  })

  it('[WK5] what made it so', () => {
    const rating = rate(seen('high', 'moderate', 'high'))
    expect(rating.madeByFactors.map((made) => [made.rule.factor, made.option, made.optionName])).toEqual([
      ['a', 'o-high', 'high'],
      ['c', 'o-high', 'high'],
    ])
    expect(rating.factors.map(({ floor }) => floor)).toEqual(['high', 'moderate', 'high'])
  })

  it('[WK6] in the order of the book', () => {
    const rating = rate({ c: 'o-least', d: 'o-least', a: 'o-least', b: 'o-least' })
    expect(rating.factors.map((made) => made.rule.factor)).toEqual(['a', 'b', 'c', 'd'])
  })

  it('[WK9] a more complex option never makes it less', () => {
    const observation = fc.constantFrom<Complexity | undefined>('least', 'moderate', 'high', undefined)
    const order = ['not-rated', ...COMPLEXITIES]
    fc.assert(
      fc.property(
        fc.record({ a: observation, b: observation, c: observation, d: observation }),
        fc.constantFrom('a', 'b', 'c', 'd'),
        (drawn, which) => {
          const observations = Object.fromEntries(
            Object.entries(drawn).flatMap(([name, floor]) =>
              floor === undefined ? [] : [[name, `o-${floor}`]],
            ),
          )
          const was = rate(observations).complexity
          const from = drawn[which]
          const raised = from === 'least' ? 'o-moderate' : 'o-high'
          const is = rate({ ...observations, [which]: raised }).complexity
          expect(order.indexOf(is)).toBeGreaterThanOrEqual(order.indexOf(was))
        },
      ),
      { numRuns: RUNS },
    )
  })
})

describe('problems', () => {
  it('[WK7] unknown factors and options, and a factor of the other work kind, all at once', () => {
    expect(problemsOf({ a: 'o-leest', overhed: 'o-least', log: 'o-least', b: 'o-least' })).toEqual([
      {
        kind: 'unknown-option',
        factor: 'a',
        option: 'o-leest',
        options: ['o-least', 'o-moderate', 'o-high'],
        nearest: 'o-least',
      },
      { kind: 'unknown-factor', factor: 'overhed' },
      { kind: 'factor-of-other-work', factor: 'log', workKinds: ['bucking'] },
    ])
  })

  it('[WK7] a mistyped factor is told with the nearest', () => {
    const rules = edition([factor('overhead')]).rules
    expect(problemsOf({ overhed: 'o-least' }, rules)).toEqual([
      { kind: 'unknown-factor', factor: 'overhed', nearest: 'overhead' },
    ])
  })

  it('[WK7] names that every object has are unknown factors like any other', () => {
    const observations = JSON.parse('{"__proto__":"o-least","constructor":"o-least"}') as Record<
      string,
      string
    >
    expect(problemsOf(observations).map(({ kind }) => kind)).toEqual(['unknown-factor', 'unknown-factor'])
    expect(rate({}).missing).toHaveLength(3)
  })

  it('[WK8] an edition without factors for the work kind', () => {
    expect(problemsOf({}, edition().rules)).toEqual([{ kind: 'no-worksheet', workKind: 'felling' }])
  })
})

describe('worksheets of the books that ship', () => {
  const sheets = shippedBookFiles().flatMap((file) =>
    file.editions.flatMap(({ id, rules }) =>
      WORK_KINDS.flatMap((workKind) => {
        const factors = rules.filter((known) => known.kind === 'worksheet.factor')
        const ofKind = factors.filter((known) => known.workKinds.includes(workKind))
        return ofKind.length === 0 ? [] : [{ id, workKind, rules, factors: ofKind }]
      }),
    ),
  )

  it('[WK1] each has an option of every least floor, so that work can be rated least', () => {
    expect(sheets.map(({ id, workKind }) => `${id} ${workKind}`)).toEqual([
      'federal-crosscut-2016 bucking',
      'federal-crosscut-2016 felling',
      'cooperator-crosscut-1 bucking',
    ])
    for (const { rules, workKind, factors } of sheets) {
      const observations = factors.map((known): [string, string] => [
        known.factor,
        known.options.find(({ floor }) => floor === 'least')?.option ?? '',
      ])
      const read = rateWorksheet(rules, workKind, Object.fromEntries(observations))
      expect(read.ok && read.value.complexity).toBe('least')
    }
  })

  const sample = () =>
    JSON.parse(
      readFileSync(new URL('../../../seeds/examples/worksheet-log.json', import.meta.url), 'utf8'),
    ) as Record<string, unknown>

  it('[WK10] the sample is read and rated: three moderates make it high', () => {
    const file = worksheetFileSchema.parse(sample())
    const rules = shippedBookFiles()
      .flatMap(({ editions }) => editions)
      .find(({ id }) => id === file.edition)?.rules
    const read = rateWorksheet(rules ?? [], file.workKind, file.observations)
    if (!read.ok) throw new Error(JSON.stringify(read.problem))
    expect(read.value).toMatchObject({ complexity: 'high', missing: [], madeByFactors: [] })
    expect(read.value.madeByStacking[0]?.factors.map((made) => made.rule.factor)).toEqual([
      'footing',
      'spring-poles',
      'bind',
    ])
  })

  it.each([
    ['another format', { format: 'kerfbook-worksheet/2' }],
    ['an unknown key', { raterr: 'somebody' }],
    ['an unknown work kind', { workKind: 'limbing' }],
    ['an observation that is no text', { observations: { bind: 3 } }],
  ])('[WK10] %s is refused', (_, wrong) => {
    expect(worksheetFileSchema.safeParse({ ...sample(), ...wrong }).success).toBe(false)
  })
})
