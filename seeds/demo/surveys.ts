import type { Complexity } from '../../lib/core/rulebooks/words.ts'
import type { Draft } from './draft.ts'
import { entry, type EntryKey } from './entries.ts'

type More = Partial<Pick<Draft<'ratings'>, 'how' | 'observations' | 'reason' | 'id'>>

function rated(
  key: EntryKey,
  item: string,
  complexity: Complexity | 'not-rated',
  [rater, day]: readonly [string, string],
  more: More = {},
): Draft<'ratings'> {
  return {
    id: `r-${item.slice(2)}`,
    recordedIn: entry(key),
    item,
    complexity,
    rater: `p-${rater}`,
    day,
    how: 'on-site',
    ...more,
  }
}

const O_BRIAIN = ['siobhan-o-briain', '2027-04-22'] as const
const RENQUIST = ['tobiah-renquist', '2027-04-20'] as const

/** What is seen at a log where nothing is against it. */
const PLAIN_LOG = {
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

/** What is seen at a tree where nothing is against it. */
const PLAIN_TREE = {
  overhead: 'clear',
  footing: 'firm',
  'spring-poles': 'none',
  escape: 'clear',
  lean: 'with-the-lay',
  soundness: 'sound',
  roots: 'sound',
  'hang-up': 'none',
  height: 'clear',
  diameter: 'twice',
}

// Surveyed log by log: what makes each highly complex differs.
const crossed = [
  ['1', { bind: 'severe-or-multiple', 'hang-up': 'jackstraw' }],
  ['2', { bind: 'severe-or-multiple', torsion: 'twisted' }],
  ['3', { bind: 'side', torsion: 'possible', 'hang-up': 'held' }],
  ['4', { bind: 'severe-or-multiple' }],
  ['5', { torsion: 'twisted', 'hang-up': 'jackstraw' }],
  ['6', { bind: 'not-told', 'hang-up': 'jackstraw' }],
  ['7', { bind: 'bottom', footing: 'steep', roots: 'may-move' }],
  ['8', { bind: 'severe-or-multiple', 'spring-poles': 'to-release' }],
  ['9', { bind: 'end', overhead: 'avoidable', torsion: 'possible', diameter: 'under-two-feet' }],
] as const

const windfall = [
  // Rated least by an A, who is not independent at that class: provisional, and planned as moderate.
  ...['1', '2', '3', '4', '5'].map((number) =>
    rated('survey-windfall', `i-windfall-fir-${number}`, 'least', ['ren-takahara', '2027-04-22']),
  ),
  rated('survey-windfall', 'i-windfall-fir-6', 'moderate', O_BRIAIN, {
    observations: { ...PLAIN_TREE, lean: 'side-or-back' },
  }),
  ...['1', '2'].map((number) =>
    rated('survey-windfall', `i-windfall-spruce-${number}`, 'high', O_BRIAIN, {
      observations: { ...PLAIN_TREE, 'hang-up': 'lodged', lean: 'heavy-or-combined' },
    }),
  ),
  ...crossed.map(([number, seen]) =>
    rated('survey-windfall', `i-windfall-log-${number}`, 'high', RENQUIST, {
      observations: { ...PLAIN_LOG, ...seen },
    }),
  ),
]

const sable = (item: string, complexity: Complexity, seen: Record<string, string>) =>
  rated('survey-sable', item, complexity, ['siobhan-o-briain', '2027-04-24'], {
    observations: { ...(item.includes('length') ? PLAIN_LOG : PLAIN_TREE), ...seen },
  })

const camps = [
  sable('i-camp-pine', 'moderate', { soundness: 'some' }),
  sable('i-camp-fir', 'moderate', { lean: 'side-or-back' }),
  sable('i-camp-snag', 'high', { soundness: 'hinge-in-doubt', overhead: 'over-work' }),
  sable('i-lake-fir', 'least', {}),
  sable('i-lake-pine', 'moderate', { height: 'narrow' }),
  sable('i-lake-twin', 'high', { 'hang-up': 'lodged' }),
  sable('i-lake-snag', 'high', { soundness: 'hinge-in-doubt' }),
  sable('i-closing-fir', 'moderate', { lean: 'side-or-back' }),
  sable('i-closing-pine', 'moderate', { overhead: 'avoidable' }),
  sable('i-tarn-stringer-1', 'moderate', { diameter: 'under-twice' }),
  sable('i-tarn-stringer-2', 'moderate', { 'hang-up': 'brushes' }),
  sable('i-tarn-length-1', 'least', {}),
  sable('i-tarn-length-2', 'least', {}),
]

const elsewhere = [
  rated('survey-winter', 'i-heron-log', 'moderate', ['tobiah-renquist', '2027-01-09'], {
    observations: { ...PLAIN_LOG, bind: 'side' },
  }),
  rated('survey-larch', 'i-cold-fork-jam', 'high', ['aurelio-brandt-nakai', '2027-04-12']),
  // Lowered by a new worksheet on site, by somebody independent at the higher class: both stay.
  rated('survey-larch', 'i-cold-fork-jam', 'moderate', ['tobiah-renquist', '2027-04-26'], {
    id: 'r-cold-fork-jam-2',
    observations: { ...PLAIN_LOG, bind: 'bottom' },
    reason: 'The water has fallen; the two upper logs are gone',
  }),
  rated('survey-larch', 'i-cold-fork-slide', 'high', ['aurelio-brandt-nakai', '2027-04-12']),
  // A B is not independent at high: this lowers nothing.
  rated('survey-larch', 'i-cold-fork-slide', 'moderate', ['dana-whitlow', '2027-04-26'], {
    id: 'r-cold-fork-slide-2',
    reason: 'It lies quieter than it looks',
  }),
  rated('survey-larch', 'i-north-rim-photo', 'moderate', ['tobiah-renquist', '2027-04-26'], { how: 'photo' }),
  rated('survey-larch', 'i-upper-quill-told', 'least', ['tobiah-renquist', '2027-04-26'], { how: 'told' }),
  rated('survey-larch', 'i-larch-upper-log', 'moderate', ['tobiah-renquist', '2027-04-27'], {
    observations: { ...PLAIN_LOG, bind: 'bottom', 'hang-up': 'held' },
  }),
  rated('survey-larch', 'i-larch-lower-log', 'least', ['tobiah-renquist', '2027-04-27'], {
    observations: PLAIN_LOG,
  }),
  rated('survey-larch', 'i-cold-fork-snag', 'high', ['siobhan-o-briain', '2027-04-27'], {
    observations: { ...PLAIN_TREE, soundness: 'hinge-in-doubt' },
  }),
  ...['1', '2'].flatMap((number) => [
    rated('survey-larch', `i-ridge-stringer-${number}`, 'moderate', ['siobhan-o-briain', '2027-04-27']),
    rated('survey-larch', `i-ridge-length-${number}`, 'least', ['siobhan-o-briain', '2027-04-27']),
  ]),
  rated('survey-larch', 'i-unrated-log', 'not-rated', ['tobiah-renquist', '2027-04-27'], {
    reason: 'Bind and roots lie under snow',
  }),
]

/** Every rating of a log or a tree: by whom, when, how. */
export const surveyRatings: Draft<'ratings'>[] = [...windfall, ...camps, ...elsewhere]

/** Raises by people who were there; anybody may raise. */
export const raises: Draft<'raises'>[] = [
  {
    id: 'u-larch-lower-log',
    recordedIn: entry('raised-2027'),
    item: 'i-larch-lower-log',
    complexity: 'moderate',
    by: 'p-anneli-rautavuoma',
    day: '2027-04-30',
    reason: 'The root wad stands half up; it may want to go back',
  },
  {
    // Nobody has rated it: raised to high it is high.
    id: 'u-cold-fork-raised',
    recordedIn: entry('raised-2027'),
    item: 'i-cold-fork-raised',
    complexity: 'high',
    by: 'p-jean-luc-daoust',
    day: '2027-04-30',
    reason: 'A seam runs through the stump, not to be seen from the trail',
  },
]
