import { describe, it } from 'vitest'
import type { Restriction } from '../../../lib/core/cards/cards.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult, assignment, designation } from '../../builders/people.ts'
import { item, place } from '../../builders/work.ts'
import type { Part } from '../../builders/records.ts'
import { expectRow, type Row } from './told.ts'

type Said = Parameters<typeof card>[2]
type Restrictions = NonNullable<NonNullable<Said>['restrictions']>

const SIXTEENTH = 0.0625

function holder(level: string, restrictions: Restrictions, said: Said = {}): Part {
  return adult('p-1', {
    cards: [card('p-1', level, { workKinds: ['bucking', 'felling'], restrictions, ...said })],
  })
}

const over = (limit: number, diameter: number) =>
  `over-diameter diameter=${diameter} limit=${limit} | restriction | none`
const missing = (what: string) => `not-on-record what=${what} | restriction | unknown`
const width = (inches: number, workKinds?: Restriction['workKinds']): Restrictions[number] => ({
  id: `width-${inches}`,
  kind: 'greatest-diameter',
  inches,
  ...(workKinds === undefined ? {} : { workKinds }),
})
const within = (...places: string[]): Restrictions[number] => ({ id: 'within', kind: 'places', places })
const kinds = (...species: string[]): Restrictions[number] => ({ id: 'kinds', kind: 'species', species })
const DOUBLE: Restrictions[number] = { id: 'double', kind: 'double-bucking-only' }
const WATCHED: Restrictions[number] = { id: 'watched', kind: 'supervisor-only' }
const NO_FELLING: Restrictions[number] = { id: 'down', kind: 'no-felling' }

const UNDER_B = 'needs-supervisor supervisor=B | grant.bucking.A | own-level'

describe('outside a restriction', () => {
  const rows: Row[] = [
    {
      name: 'at the limit',
      facts: [holder('B', [width(24)])],
      work: { diameter: 24 },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'a sixteenth over',
      facts: [holder('B', [width(24)])],
      work: { diameter: 24 + SIXTEENTH },
      standing: 'none',
      findings: [over(24, 24 + SIXTEENTH)],
    },
    {
      name: 'no supervisor cures it',
      facts: [holder('A', [width(24)])],
      work: { diameter: 25 },
      standing: 'none',
      findings: [UNDER_B, over(24, 25)],
    },
    {
      name: 'all bind together',
      facts: [holder('B', [width(24), within('gate'), kinds('invented pine')])],
      work: { diameter: 24, place: 'ford', species: 'invented fir' },
      standing: 'none',
      findings: [
        'outside-places places=gate | restriction | none',
        'outside-species allowed=invented pine | restriction | none',
      ],
    },
  ]
  it.each(rows)('[AU28] $name', expectRow)

  it.each([
    ['bucking', 'none', [over(18, 20)]],
    ['felling', 'independent', []],
  ] as const)('[AU29] one that names bucking, asked for %s', (workKind, standing, findings) => {
    expectRow({
      name: '',
      facts: [holder('B', [width(18, ['bucking'])])],
      work: { workKind },
      standing,
      findings,
    })
  })

  it.each(['bucking', 'felling'] as const)('[AU29] one that names no work kind binds %s', (workKind) => {
    expectRow({
      name: '',
      facts: [holder('B', [width(18)])],
      work: { workKind },
      standing: 'none',
      findings: [over(18, 20)],
    })
  })
})

describe('what the question does not state, and lists', () => {
  const places = [
    place('quill', { kind: 'unit' }),
    place('gate', { parent: 'quill' }),
    place('ford', { parent: 'quill' }),
  ]
  const rows: Row[] = [
    {
      name: 'no place',
      facts: [holder('B', [within('gate')])],
      standing: 'unknown',
      findings: [missing('place')],
    },
    {
      name: 'the place itself',
      facts: [{ places }, holder('B', [within('gate')])],
      work: { place: 'gate' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'a place that lies in it',
      facts: [{ places }, holder('B', [within('quill')])],
      work: { place: 'gate' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'the place that it lies in',
      facts: [{ places }, holder('B', [within('gate')])],
      work: { place: 'quill' },
      standing: 'none',
      findings: ['outside-places places=gate | restriction | none'],
    },
    {
      name: 'a place beside it',
      facts: [{ places }, holder('B', [within('gate')])],
      work: { place: 'ford' },
      standing: 'none',
      findings: ['outside-places places=gate | restriction | none'],
    },
    {
      name: 'an empty list of places',
      facts: [{ places }, holder('B', [within()])],
      work: { place: 'gate' },
      standing: 'none',
      findings: ['outside-places places= | restriction | none'],
    },
    {
      name: 'no species',
      facts: [holder('B', [kinds('invented fir')])],
      work: { notStated: ['species'] },
      standing: 'unknown',
      findings: [missing('species')],
    },
    {
      name: 'a species of the list',
      facts: [holder('B', [kinds('invented pine', 'Invented Fir')])],
      standing: 'independent',
      findings: [],
    },
    {
      name: 'an empty list of species',
      facts: [holder('B', [kinds()])],
      standing: 'none',
      findings: ['outside-species allowed= | restriction | none'],
    },
    {
      name: 'one or two hands not said',
      facts: [holder('B', [DOUBLE])],
      work: { notStated: ['hands'] },
      standing: 'unknown',
      findings: [missing('hands')],
    },
    {
      name: 'nothing is asked for where no restriction asks',
      facts: [holder('B', [])],
      work: { notStated: ['hands', 'species'] },
      standing: 'independent',
      findings: [],
    },
  ]
  it.each(rows)('[AU30] $name', expectRow)
})

describe('kinds of restriction', () => {
  const log = item('tree-1', { workKind: 'felling', diameter: 20 })
  const learning: Part = {
    items: [log],
    assignments: [
      assignment('p-1', ['tree-1'], ['trainer'], { firstDay: '2027-07-01', lastDay: '2027-07-31' }),
    ],
    designations: [designation('trainer')],
  }
  const trainer = adult('trainer', { cards: [card('trainer', 'C', { workKinds: ['bucking', 'felling'] })] })

  const rows: Row[] = [
    {
      name: 'double bucking only, two hands',
      facts: [holder('B', [DOUBLE])],
      work: { hands: 'two' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'double bucking only, one hand',
      facts: [holder('B', [DOUBLE])],
      work: { hands: 'one' },
      standing: 'none',
      findings: ['double-bucking-only | restriction | none'],
    },
    {
      name: 'double bucking only, felling',
      facts: [holder('B', [DOUBLE])],
      work: { workKind: 'felling', hands: 'one' },
      standing: 'independent',
      findings: [],
    },
    {
      name: 'no felling, felling',
      facts: [holder('B', [NO_FELLING])],
      work: { workKind: 'felling' },
      standing: 'none',
      findings: ['no-felling | restriction | none'],
    },
    {
      name: 'no felling, bucking',
      facts: [holder('B', [NO_FELLING])],
      standing: 'independent',
      findings: [],
    },
    {
      name: 'no felling bars training in it',
      facts: [trainer, learning, holder('B', [NO_FELLING], { workKinds: ['bucking'] })],
      work: { workKind: 'felling', item: 'tree-1' },
      standing: 'none',
      findings: [
        'no-card sawKind=crosscut workKind=felling | card.needed | training',
        'no-felling | restriction | none',
        'training-only supervisor=B trainers=trainer | assignment | training',
      ],
    },
  ]
  it.each(rows)('[AU31] $name', expectRow)

  const watched: Row[] = [
    {
      name: 'a B',
      facts: [holder('B', [WATCHED])],
      standing: 'own-level',
      findings: ['needs-supervisor supervisor=B | restriction | own-level'],
    },
    {
      name: 'an A, whose cell says so already',
      facts: [holder('A', [WATCHED])],
      standing: 'own-level',
      findings: [UNDER_B],
    },
    {
      name: 'a B whose cell says training only',
      facts: [holder('B', [WATCHED])],
      work: { complexity: 'high' },
      standing: 'training',
      findings: ['training-only level=B supervisor=C | grant.bucking.B | training'],
    },
    {
      name: 'a C on highly complex work, who needs a C',
      facts: [holder('C', [WATCHED])],
      work: { complexity: 'high' },
      standing: 'own-level',
      findings: ['needs-supervisor supervisor=C | restriction | own-level'],
    },
  ]
  it.each(watched)('[AU32] only with a supervisor: $name', expectRow)
})
