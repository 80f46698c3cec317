import { describe, expect, it } from 'vitest'
import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { EditionFault } from '../../lib/core/rulebooks/edition-check.ts'
import type { TilingProblem } from '../../lib/core/rulebooks/tiling.ts'
import { rateWorksheet, type WorksheetProblem } from '../../lib/core/work/worksheet.ts'
import { editionFaultSentence, editionProblemLine, tilingSentence } from '../../lib/wording/editions.ts'
import { worksheetProblemSentence, worksheetSentences } from '../../lib/wording/worksheets.ts'
import { shippedBooks } from '../builders/shipped-books.ts'
import { expectSays, expectSentence } from './sentence-checks.ts'

type FaultSample<Kind extends EditionFault['kind']> = [
  Omit<Extract<EditionFault, { kind: Kind }>, 'kind'>,
  ...string[],
]

const rule = 'grant.bucking.A'
const first = dateOf('2027-07-08')
const last = dateOf('2027-07-11')

const FAULTS: { [Kind in EditionFault['kind']]: [FaultSample<Kind>, ...FaultSample<Kind>[]] } = {
  'days-backwards': [[{ firstDay: last, lastDay: first }, '11 July 2027', '8 July 2027']],
  'rule-missing': [[{ ruleKind: 'card.days' }, 'card.days']],
  'rule-repeated': [[{ ruleKind: 'card.days', rule }, 'card.days', rule]],
  'twin-rule': [[{ rule }, rule]],
  'twin-level': [[{ level: 'A' }, 'A']],
  'twin-rank': [[{ rank: 2, level: 'A' }, '2', 'A']],
  'unknown-level': [
    [{ rule, level: 'D', nearest: 'C' }, rule, 'D', '“C” meant'],
    [{ rule, level: 'D' }, 'D'],
  ],
  'twin-grant': [
    [{ rule, level: 'A', workKind: 'bucking', sawKind: 'crosscut' }, rule, 'A', 'bucking', 'crosscut'],
  ],
  'twin-least-age': [[{ rule, sawKind: 'crosscut' }, rule, 'crosscut']],
  'ages-backwards': [[{ rule, from: 18, under: 16 }, '18', '16']],
  'twin-term': [[{ rule, level: 'A' }, rule, 'A']],
  'twin-evaluator': [[{ rule, level: 'C', workKind: 'felling' }, rule, 'C', 'felling']],
  'recognises-itself': [[{ rule, book: 'b-1' }, rule, 'b-1']],
  'twin-certificate': [[{ rule, subject: 'cpr' }, rule, 'cpr']],
  'certificate-not-asked-for': [[{ rule, subject: 'cpx', nearest: 'cpr' }, rule, 'cpx', '“cpr” meant']],
  'twin-factor': [[{ rule, factor: 'bind', workKind: 'bucking' }, rule, 'bind', 'bucking']],
  'twin-option': [[{ rule, option: 'side' }, rule, 'side']],
  'unknown-caution': [
    [{ rule, caution: 'overheat', nearest: 'overhead' }, rule, 'overheat', '“overhead” meant'],
  ],
  'twin-size': [[{ rule, limit: 'on-roster', workKind: 'felling' }, rule, 'on a roster', 'felling']],
  'twin-field-days': [[{ rule, workKind: 'felling' }, rule, 'field days', 'felling']],
  'twin-share': [[{ rule, level: 'B', workKind: 'bucking' }, rule, 'level B', 'bucking']],
  'twin-module': [[{ rule, module: 'binds' }, rule, 'binds']],
  'unknown-module': [[{ rule, module: 'bind', nearest: 'binds' }, rule, 'bind', '“binds” meant']],
  'twin-training-record': [[{ rule, basis: 'prior-training' }, rule, 'training had before']],
}

describe('faults of an edition', () => {
  const samples = Object.entries(FAULTS).flatMap(([kind, ofKind]) =>
    ofKind.map(([figures, ...words]) => ({
      kind,
      words,
      fault: { kind, ...figures } as unknown as EditionFault,
    })),
  )

  it.each(samples)('[WO6] [WO8] $kind says $words', ({ fault, words }) => {
    expectSays(editionFaultSentence(fault), ...words)
  })

  it('[WO6] a line says where in the edition', () => {
    const line = editionProblemLine({ path: ['rules', 3, 'id'], kind: 'twin-rule', rule })
    expect(line).toBe(`rules[3].id: The rule id ${rule} stands twice.`)
  })

  const between = { book: 'b-1', before: 'e-1', after: 'e-2', firstDay: first }
  it.each<TilingProblem>([
    { kind: 'gap', ...between, lastDay: last },
    { kind: 'overlap', ...between, lastDay: last },
    { kind: 'open-end-not-last', ...between },
  ])('[WO6] [WO8] $kind names the book, the editions and the days', (problem) => {
    expectSays(tilingSentence(problem), 'b-1', 'e-1', 'e-2', 'July 2027')
  })
})

describe('worksheets', () => {
  const { rules } = shippedBooks().editions.find((edition) => edition.id === 'federal-crosscut-2016')!
  const factors = rules
    .filter((known) => known.kind === 'worksheet.factor')
    .filter(({ workKinds }) => workKinds.includes('bucking'))
  const seen = (floors: Partial<Record<string, string>>) =>
    Object.fromEntries(
      factors.map(({ factor, options }) => [
        factor,
        (options.find(({ floor }) => floor === (floors[factor] ?? 'least')) ?? options[0]!).option,
      ]),
    )
  const rate = (observations: Record<string, string>) => {
    const rated = rateWorksheet(rules, 'bucking', observations)
    if (!rated.ok) throw new Error('the sample worksheet is refused')
    return worksheetSentences(rated.value)
  }

  it.each<[WorksheetProblem, ...string[]]>([
    [{ kind: 'no-worksheet', workKind: 'felling' }, 'felling'],
    [{ kind: 'unknown-factor', factor: 'bin', nearest: 'bind' }, 'bin', '“bind” meant'],
    [
      { kind: 'factor-of-other-work', factor: 'lean', workKinds: ['felling', 'felling'] },
      'lean',
      'one of felling,',
    ],
    [
      { kind: 'unknown-option', factor: 'bind', option: 'sid', options: ['side', 'top'], nearest: 'side' },
      'sid',
      'side or top',
      '“side” meant',
    ],
  ])('[WO6] [WO8] %o', (problem, ...words) => {
    expectSays(worksheetProblemSentence(problem), ...words)
  })

  it('[WO15] says the complexity and the factor that made it so', () => {
    const sentences = rate(seen({ bind: 'moderate' }))
    expect(sentences[0]).toBe('This makes the work moderately complex.')
    expect(sentences[1]).toContain('Bind')
    expect(sentences[1]).toContain('worksheet.bucking.bind')
  })

  it('[WO15] says that several of one class made the next', () => {
    const sentences = rate(seen({ bind: 'moderate', footing: 'moderate', 'spring-poles': 'moderate' }))
    expect(sentences[0]).toContain('highly complex')
    expect(sentences.join(' ')).toContain('worksheet.stacking')
  })

  it('[WO15] says what was not observed, and that it leaves the work unrated', () => {
    const sentences = rate({})
    expect(sentences).toHaveLength(1)
    expectSentence(sentences[0]!)
    expect(sentences[0]).toContain('Overhead hazards')
  })
})
