import { describe, it } from 'vitest'
import type { Standing } from '../../../lib/core/rulebooks/standing.ts'
import type { WorkKind } from '../../../lib/core/rulebooks/words.ts'
import { card } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import { expectRow } from './told.ts'

const COMPLEXITIES = ['least', 'moderate', 'high'] as const

/** What each level is for the three complexities, and the level of the supervisor where one is needed. */
const CELLS: readonly [string, WorkKind, readonly [Standing, string?][]][] = [
  ['trainee', 'bucking', [['training', 'B'], ['none'], ['none']]],
  ['trainee', 'felling', [['none'], ['none'], ['none']]],
  ['A', 'bucking', [['own-level', 'B'], ['training', 'B'], ['none']]],
  ['A', 'felling', [['own-level', 'B'], ['training', 'B'], ['none']]],
  ['B', 'bucking', [['independent'], ['independent'], ['training', 'C']]],
  ['B', 'felling', [['independent'], ['independent'], ['training', 'C']]],
  ['C', 'bucking', [['independent'], ['independent'], ['independent']]],
  ['C', 'felling', [['independent'], ['independent'], ['independent']]],
]

function findingOf(
  level: string,
  workKind: WorkKind,
  complexity: string,
  standing: Standing,
  under?: string,
): string[] {
  const grant = `grant.${workKind}.${level}`
  switch (standing) {
    case 'none':
      return [`level-too-low complexity=${complexity} level=${level} | ${grant} | none`]
    case 'training':
      return [`training-only level=${level} supervisor=${under} | ${grant} | training`]
    case 'own-level':
      return [`needs-supervisor supervisor=${under} | ${grant} | own-level`]
    case 'independent':
    case 'unknown':
      return []
  }
}

const GRANTS = CELLS.flatMap(([level, workKind, cells]) =>
  cells.map(([standing, under], index) => {
    const complexity = COMPLEXITIES[index] ?? 'high'
    const findings = findingOf(level, workKind, complexity, standing, under)
    return { level, workKind, complexity, standing, findings }
  }),
)

describe('levels', () => {
  it.each(GRANTS)(
    '[AU19] $level, $workKind, $complexity: $standing',
    ({ level, workKind, complexity, standing, findings }) => {
      expectRow({
        name: '',
        facts: [adult('p-1', { cards: [card('p-1', level, { workKinds: [workKind] })] })],
        work: { workKind, complexity },
        standing,
        findings,
      })
    },
  )

  it.each([
    ['trainee', 'bucking', true],
    ['trainee', 'felling', false],
    ['A', 'bucking', true],
    ['B', 'felling', true],
    ['C', 'bucking', true],
  ] as const)('[AU20] unrated, %s, %s: the level gives something: %s', (level, workKind, gives) => {
    expectRow({
      name: '',
      facts: [adult('p-1', { cards: [card('p-1', level, { workKinds: [workKind] })] })],
      work: { workKind, complexity: 'not-rated' },
      standing: gives ? 'unknown' : 'none',
      findings: [
        gives
          ? 'complexity-unrated | complexity.rated | unknown'
          : `level-too-low complexity=not-rated level=${level} | grant.${workKind}.${level} | none`,
      ],
    })
  })

  const NOT_STATED = 'not-on-record what=work-kinds | card.needed | unknown'

  it.each([
    {
      workKind: 'bucking' as const,
      complexity: 'moderate' as const,
      standing: 'independent' as const,
      findings: [],
    },
    {
      workKind: 'felling' as const,
      complexity: 'moderate' as const,
      standing: 'unknown' as const,
      findings: [NOT_STATED],
    },
    {
      workKind: 'felling' as const,
      complexity: 'high' as const,
      standing: 'unknown' as const,
      findings: [NOT_STATED, 'training-only level=B supervisor=C | grant.felling.B | training'],
    },
  ])(
    '[AU21] a B whose work kinds are not stated, $workKind, $complexity: $standing',
    ({ workKind, complexity, standing, findings }) => {
      expectRow({
        name: '',
        facts: [adult('p-1', { cards: [card('p-1', 'B', { workKinds: 'not-stated' })] })],
        work: { workKind, complexity },
        standing,
        findings,
      })
    },
  )

  it('[AU21] what the level does not give anyhow is none', () => {
    expectRow({
      name: '',
      facts: [adult('p-1', { cards: [card('p-1', 'A', { workKinds: 'not-stated' })] })],
      work: { workKind: 'felling', complexity: 'high' },
      standing: 'none',
      findings: [NOT_STATED, 'level-too-low complexity=high level=A | grant.felling.A | none'],
    })
  })
})
