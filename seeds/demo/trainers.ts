import type { WorkKind } from '../../lib/core/rulebooks/words.ts'
import { FEDERAL, type Draft } from './draft.ts'
import { entry } from './entries.ts'

type Row = readonly [
  person: string,
  role: 'instructor' | 'evaluator',
  level: string,
  workKinds: WorkKind[],
  lastDay?: string,
]

const rows: Row[] = [
  ['siobhan-o-briain', 'instructor', 'C', ['bucking', 'felling']],
  ['siobhan-o-briain', 'evaluator', 'C', ['bucking', 'felling']],
  ['tobiah-renquist', 'instructor', 'C', ['bucking']],
  // He is also the evaluator of somebody whom he taught.
  ['tobiah-renquist', 'evaluator', 'C', ['bucking']],
  ['ifeoma-castellane', 'instructor', 'B', ['bucking', 'felling'], '2027-12-31'],
  ['yelena-marozava', 'evaluator', 'C', ['bucking', 'felling'], '2027-06-30'],
  ['aurelio-brandt-nakai', 'evaluator', 'C', ['bucking']],
  // Designated through 2028, though his card ends on 21 May 2027.
  ['bogdan-ilievski', 'instructor', 'B', ['bucking'], '2028-12-31'],
]

/** Who may teach and who may evaluate, to which level, from which day. */
export const designations: Draft<'designations'>[] = rows.map(
  ([person, role, level, workKinds, lastDay]) => ({
    id: `d-${person}-${role}`,
    recordedIn: entry('trainers-2025'),
    person: `p-${person}`,
    role,
    book: FEDERAL,
    level,
    workKinds,
    sawKind: 'crosscut',
    firstDay: '2025-04-03',
    ...(lastDay === undefined ? {} : { lastDay }),
    by: 'Petra Lindqvist-Amadi, certifying official',
  }),
)
