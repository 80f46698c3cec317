import { describe, expect, it } from 'vitest'
import { ask } from '../../lib/core/authority/ask.ts'
import { openRecords } from '../../lib/core/authority/authority-index.ts'
import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import type { WorkKind } from '../../lib/core/rulebooks/words.ts'
import { rateWorksheet } from '../../lib/core/work/worksheet.ts'
import { card } from '../builders/cards.ts'
import { adult, certificate, designation } from '../builders/people.ts'
import { records, type Part } from '../builders/records.ts'
import { shippedBooks } from '../builders/shipped-books.ts'
import { question, work, type WorkSaid } from '../builders/work.ts'

const BOTH: ('bucking' | 'felling')[] = ['bucking', 'felling']

/** The standing of everybody asked about one piece of work on 8 July 2027. */
function standingsOf(facts: readonly Part[], said: WorkSaid): Record<string, Standing> {
  const { answers } = ask(openRecords(records(...facts)), question(work(said), '2027-07-08'))
  return Object.fromEntries(answers.map(({ person, standing }) => [person, standing]))
}

const crosscut = (id: string, level: string): Part =>
  adult(id, { cards: [card(id, level, { workKinds: BOTH })] })
const power = (id: string, level: string): Part =>
  adult(id, {
    certificates: [certificate(id, 'annual-refresher')],
    cards: [card(id, level, { book: 'interagency-faller', sawKinds: ['chain-saw'], workKinds: BOTH })],
  })

/** 36.7 inches as the report has it, to the sixteenth. */
const STUMP = 36.6875

const ACCIDENT = [
  {
    source: 'Dutch Creek incident, accident investigation factual report, 2008',
    fact: 'a stump of 36.7 in rated class C, the best qualification present class B: nobody present may, power saw',
    facts: [
      power('best', 'intermediate'),
      power('other', 'basic'),
      { ...adult('third'), certificates: [certificate('third', 'annual-refresher')] },
      { book: 'interagency-faller' },
    ],
    work: { workKind: 'felling', sawKind: 'chain-saw', complexity: 'high', diameter: STUMP },
    present: ['best', 'other', 'third'],
    standings: { best: 'training', other: 'none', third: 'none' },
  },
  {
    source: 'Dutch Creek incident, accident investigation factual report, 2008, as crosscut work',
    fact: 'the same with a B, an A and somebody without a card',
    facts: [crosscut('best', 'B'), crosscut('other', 'A'), adult('third')],
    work: { workKind: 'felling', complexity: 'high', diameter: STUMP },
    present: ['best', 'other', 'third'],
    standings: { best: 'training', other: 'none', third: 'none' },
  },
] satisfies {
  source: string
  fact: string
  facts: Part[]
  work: WorkSaid
  present: string[]
  standings: Record<string, Standing>
}[]

describe('an accident', () => {
  it.each(ACCIDENT)('$source: $fact', ({ facts, work: said, present, standings }) => {
    expect(standingsOf(facts, said)).toEqual(standings)
    const asked = question(work(said), '2027-07-08', '2027-07-08', {
      persons: present,
      company: present.map((person) => ({ person })),
    })
    // Training is filled by somebody independent alone: with nobody independent present nobody is served.
    const { answers, company } = ask(
      openRecords(records(...facts, { designations: [designation('best')] })),
      asked,
    )
    expect(company).toMatchObject([{ pairs: [], feasible: false }])
    expect(answers.map(({ remedies }) => remedies.somebodyElse)).toEqual([0, 0, 0])
  })

  it('Dutch Creek incident, 2008: somebody of class C would have been one who may', () => {
    const facts = [power('best', 'intermediate'), power('called', 'advanced'), { book: 'interagency-faller' }]
    const said: WorkSaid = { workKind: 'felling', sawKind: 'chain-saw', complexity: 'high', diameter: STUMP }
    expect(standingsOf(facts, said)).toEqual({ best: 'training', called: 'independent' })
  })
})

const LEVEL_SOURCE = 'FSM 2358.05 (2016), definitions of the levels'

/** Which level each class of complexity needs. */
const MAPPING = [
  {
    source: LEVEL_SOURCE,
    fact: 'least complex: an A under supervision, a B alone',
    complexity: 'least',
    a: 'own-level',
    b: 'independent',
    c: 'independent',
  },
  {
    source: LEVEL_SOURCE,
    fact: 'moderately complex: a B',
    complexity: 'moderate',
    a: 'training',
    b: 'independent',
    c: 'independent',
  },
  {
    source: LEVEL_SOURCE,
    fact: 'highly complex: a C',
    complexity: 'high',
    a: 'none',
    b: 'training',
    c: 'independent',
  },
] as const

describe('size-up', () => {
  const people = [crosscut('a', 'A'), crosscut('b', 'B'), crosscut('c', 'C')]

  it.each(MAPPING)('$source: $fact', ({ complexity, a, b, c }) => {
    for (const workKind of BOTH) expect(standingsOf(people, { workKind, complexity })).toEqual({ a, b, c })
  })

  it.each([12, 24, 40, 60])(
    'FSM 2358 (2016), as two accounts say: complexity decides, and not size: %i in',
    (diameter) => {
      expect(standingsOf(people, { complexity: 'moderate', diameter })).toMatchObject({ b: 'independent' })
      expect(standingsOf(people, { complexity: 'high', diameter })).toMatchObject({ b: 'training' })
    },
  )

  const rules = shippedBooks().editions.find(({ book }) => book === 'federal-crosscut')?.rules ?? []

  it.each([
    { source: 'FS-2300-0052a (v02-2018)', factor: 'overhead', workKind: 'bucking' },
    { source: 'FS-2300-0052a (v02-2018)', factor: 'footing', workKind: 'bucking' },
    { source: 'FS-2300-0052a (v02-2018)', factor: 'spring-poles', workKind: 'bucking' },
    { source: 'FS-2300-0052a (v02-2018)', factor: 'escape', workKind: 'bucking' },
    { source: 'FS-2300-0052a (v02-2018)', factor: 'bind', workKind: 'bucking' },
    { source: 'FS-2300-0052a (v02-2018)', factor: 'torsion', workKind: 'bucking' },
    { source: '29 CFR 1910.266(h)(2)(iii), from memory', factor: 'lean', workKind: 'felling' },
    { source: '29 CFR 1910.266(h)(1)(vi)-(ix)', factor: 'hang-up', workKind: 'felling' },
    { source: '29 CFR 1910.266(h)(1)(i)', factor: 'height', workKind: 'felling' },
  ])('$source: $factor is looked at for $workKind', ({ source, factor, workKind }) => {
    const held = rules.find(
      (rule) =>
        rule.kind === 'worksheet.factor' &&
        rule.factor === factor &&
        rule.workKinds.includes(workKind as WorkKind),
    )
    expect(held?.source).toContain(source.replace(', from memory', ''))
  })

  /** A bucking worksheet on which everything is easy but for what a case says. */
  const seen = {
    overhead: 'clear',
    footing: 'firm',
    'spring-poles': 'none',
    escape: 'clear',
    bind: 'top',
    torsion: 'none',
    soundness: 'sound',
    roots: 'none',
    'hang-up': 'none',
    diameter: 'two-feet',
  }

  it.each([
    {
      source: 'common practice, no source',
      fact: 'nothing complex: an A may, under a B',
      but: {},
      a: 'own-level',
      b: 'independent',
    },
    {
      source: 'common practice, no source',
      fact: 'two things moderately complex: a B',
      but: { bind: 'bottom', footing: 'steep' },
      a: 'training',
      b: 'independent',
    },
    {
      source: 'Practitioners, hearsay: complexities that stack raise the level',
      fact: 'three things moderately complex: a C',
      but: { bind: 'bottom', footing: 'steep', torsion: 'possible' },
      a: 'none',
      b: 'training',
    },
    {
      source: 'FS-2300-0052a (v02-2018) scores multiple binds by themselves',
      fact: 'several binds at once: a C',
      but: { bind: 'severe-or-multiple' },
      a: 'none',
      b: 'training',
    },
  ])('$source: $fact', ({ but, a, b }) => {
    const read = rateWorksheet(rules, 'bucking', { ...seen, ...but })
    if (!read.ok) throw new Error('the worksheet could not be read')
    expect(standingsOf(people, { complexity: read.value.complexity })).toEqual({ a, b, c: 'independent' })
  })
})
