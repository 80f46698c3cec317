import { cells, type BookRow } from './book-row.ts'

const COOPERATOR = 'cooperator-crosscut-1'
const INTERAGENCY = 'interagency-faller-1'
const COOPERATOR_SCHEME = 'Back Country Horsemen of Washington'
const POSITIONS = 'National Wildfire Coordinating Group, incident position descriptions'

/** What the sources of the cooperator book and of the interagency book say, and the rule that holds each. */
export const SCHEME_ROWS: readonly BookRow[] = [
  {
    fact: 'the card of an A runs one year',
    source: COOPERATOR_SCHEME,
    mark: 'published',
    edition: COOPERATOR,
    rule: 'term.A',
    figures: { levels: ['A'], term: { years: 1 } },
  },
  {
    fact: 'the card of a B runs two years',
    source: COOPERATOR_SCHEME,
    mark: 'published',
    edition: COOPERATOR,
    rule: 'term.B',
    figures: { levels: ['B'], term: { years: 2 } },
  },
  {
    fact: 'the card of a C runs three years',
    source: COOPERATOR_SCHEME,
    mark: 'published',
    edition: COOPERATOR,
    rule: 'term.C',
    figures: { levels: ['C'], term: { years: 3 } },
  },
  {
    fact: 'an A works under the immediate supervision of a B or C; of which complexity the scheme does not say',
    source: 'does not name the complexity',
    mark: 'program-default',
    edition: COOPERATOR,
    rule: 'grant.bucking.A',
    figures: cells('own-level', 'none', 'none'),
  },
  {
    fact: 'a class alone never certifies',
    source: COOPERATOR_SCHEME,
    mark: 'published',
    edition: COOPERATOR,
    rule: 'card.needed',
    figures: {},
  },
  {
    fact: 'the least age for crosscut is 16, on an application page too',
    source: 'an application page',
    mark: 'published',
    edition: COOPERATOR,
    rule: 'age.least',
    figures: { sawKind: 'crosscut', years: 16 },
  },
  ...(['bucking', 'felling'] as const).flatMap((workKind): BookRow[] => [
    {
      fact: `a basic faller is closely supervised and does intermediate tasks supervised (${workKind})`,
      source: POSITIONS,
      // The description of a faller does not part bucking.
      mark: workKind === 'felling' ? 'published' : 'program-default',
      edition: INTERAGENCY,
      rule: `grant.${workKind}.basic`,
      figures: { sawKind: 'chain-saw', ...cells('own-level', 'own-level', 'none') },
    },
    {
      fact: `an intermediate faller is unsupervised to moderate, and does advanced tasks supervised (${workKind})`,
      source: POSITIONS,
      // The description of a faller does not part bucking.
      mark: workKind === 'felling' ? 'published' : 'program-default',
      edition: INTERAGENCY,
      rule: `grant.${workKind}.intermediate`,
      figures: { sawKind: 'chain-saw', ...cells('independent', 'independent', 'training') },
    },
    {
      fact: `an advanced faller is unsupervised in high complexity: remembered (${workKind})`,
      source: POSITIONS,
      mark: 'from-memory',
      edition: INTERAGENCY,
      rule: `grant.${workKind}.advanced`,
      figures: { sawKind: 'chain-saw', ...cells('independent', 'independent', 'independent') },
    },
  ]),
  {
    fact: 'the course and a completed task book come first',
    source: POSITIONS,
    mark: 'published',
    edition: INTERAGENCY,
    rule: 'card.needed',
    figures: {},
  },
  {
    fact: 'the refresher is annual',
    source: 'RT-130',
    mark: 'published',
    edition: INTERAGENCY,
    rule: 'certificate.annual-refresher',
    figures: { subject: 'annual-refresher' },
  },
  {
    fact: 'the least age with a power saw is 18: remembered for this scheme',
    source: 'from memory',
    mark: 'from-memory',
    edition: INTERAGENCY,
    rule: 'age.least',
    figures: { sawKind: 'chain-saw', years: 18 },
  },
  {
    fact: 'positions lapse without use: remembered, and no rule of days rests on it',
    source: 'From memory',
    mark: 'from-memory',
    edition: INTERAGENCY,
    rule: 'card.days',
    figures: {},
  },
  {
    fact: 'the evaluator is qualified in the position: remembered',
    source: 'PMS 311-91',
    mark: 'from-memory',
    edition: INTERAGENCY,
    rule: 'evaluator.advanced',
    figures: { holds: 'advanced', recommends: ['basic', 'intermediate', 'advanced'] },
  },
  {
    fact: 'the home agency certifies by another signature: remembered',
    source: 'PMS 311-91',
    mark: 'from-memory',
    edition: INTERAGENCY,
    rule: 'decider',
    figures: { taughtWithinMonths: 24 },
  },
  {
    fact: 'tasks are initialled by somebody qualified: remembered',
    source: 'PMS 311-91',
    mark: 'from-memory',
    edition: INTERAGENCY,
    rule: 'supervision.trainer',
    figures: { roles: ['instructor', 'evaluator'] },
  },
]
