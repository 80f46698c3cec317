import type { Draft } from './draft.ts'
import { entry, type EntryKey } from './entries.ts'
import { hitch, type HitchList } from './hitch-list.ts'

const FORESTER = 'Corwin Achebe-Stroud, unit forester'

type More = Partial<Draft<'items'>>

function log(key: EntryKey, list: HitchList, id: string, name: string, diameter: number, more: More = {}) {
  const { place, firstDay, lastDay } = hitch(list)
  return {
    id,
    recordedIn: entry(key),
    list,
    name,
    workKind: 'bucking',
    diameter,
    place,
    firstDay,
    lastDay,
    hands: 'two',
    ...more,
  } satisfies Draft<'items'>
}

function tree(
  key: EntryKey,
  list: HitchList,
  id: string,
  name: string,
  [diameter, height]: readonly [number, number],
  more: More = {},
) {
  return {
    ...log(key, list, id, name, diameter),
    workKind: 'felling',
    height,
    approval: { by: FORESTER, day: '2027-04-22' },
    ...more,
  } satisfies Draft<'items'>
}

/** A tree whose cutting nobody has approved yet: it blocks departure and never standing. */
function unapproved(...row: Parameters<typeof tree>): Draft<'items'> {
  const { approval: _, ...rest } = tree(...row)
  return rest
}

const SPRUCE: More = { species: 'spruce' }
const FIR: More = { species: 'fir' }
const STRINGER: More = { species: 'fir', hands: 'two', trailOpen: false }
const LATE: More = { firstDay: '2027-07-12' }

const windfall: Draft<'items'>[] = [
  ...(
    [
      ['1', 18],
      ['2', 19],
      ['3', 20],
      ['4', 20.5],
      ['5', 21.25],
      ['6', 22],
    ] as const
  ).map(([number, diameter]) =>
    tree(
      'survey-windfall',
      'h-11',
      `i-windfall-fir-${number}`,
      `Leaning fir ${number} above the trail`,
      [diameter, 70],
      FIR,
    ),
  ),
  ...['1', '2'].map((number) =>
    unapproved(
      'survey-windfall',
      'h-11',
      `i-windfall-spruce-${number}`,
      `Hung spruce ${number} over the trail`,
      [19, 60],
      { ...SPRUCE, hands: 'one', firstDay: '2027-07-12', lastDay: '2027-07-14' },
    ),
  ),
  ...(
    [
      ['1', 16],
      ['2', 17.5],
      ['3', 18],
      ['4', 18.75],
      ['5', 20],
      ['6', 20],
      ['7', 21],
      ['8', 21.5],
      ['9', 22],
    ] as const
  ).map(([number, diameter]) =>
    log(
      'survey-windfall',
      'h-11',
      `i-windfall-log-${number}`,
      `Crossed windfall ${number}, of nine`,
      diameter,
      { ...LATE, ...SPRUCE },
    ),
  ),
]

const camps: Draft<'items'>[] = [
  tree('survey-sable', 'h-06', 'i-camp-pine', 'Dead pine over the kitchen', [20, 65], { species: 'pine' }),
  tree('survey-sable', 'h-06', 'i-camp-fir', 'Fir leaning to the tents', [16, 55], FIR),
  tree('survey-sable', 'h-06', 'i-camp-snag', 'Burnt snag by the hitch rail', [26, 40], {
    ...SPRUCE,
    firstDay: '2027-06-21',
    lastDay: '2027-06-23',
    approval: { by: FORESTER, day: '2027-04-22', conditions: 'No stock at the rail; the camp is closed.' },
  }),
  tree('survey-sable', 'h-12', 'i-lake-fir', 'Fir at the landing', [18, 60], FIR),
  tree('survey-sable', 'h-12', 'i-lake-pine', 'Pine over the shore trail', [21, 70], { species: 'pine' }),
  tree('survey-sable', 'h-12', 'i-lake-twin', 'Twin spruce grown into its neighbour', [24, 75], SPRUCE),
  unapproved('survey-sable', 'h-12', 'i-lake-snag', 'Hollow snag at the far camp', [28, 35], SPRUCE),
  tree('survey-sable', 'h-22', 'i-closing-fir', 'Fir over the closed camp', [17, 60], FIR),
  tree('survey-sable', 'h-22', 'i-closing-pine', 'Pine over the closed camp', [19, 65], { species: 'pine' }),
]

const bridges: Draft<'items'>[] = [
  tree(
    'survey-sable',
    'h-04',
    'i-tarn-stringer-1',
    'Stringer tree 1, to be felled and bucked to 28 ft',
    [18, 80],
    STRINGER,
  ),
  tree(
    'survey-sable',
    'h-04',
    'i-tarn-stringer-2',
    'Stringer tree 2, to be felled and bucked to 28 ft',
    [19, 82],
    STRINGER,
  ),
  log('survey-sable', 'h-04', 'i-tarn-length-1', 'Stringer 1, cut to length', 18, {
    ...STRINGER,
    firstDay: '2027-06-15',
  }),
  log('survey-sable', 'h-04', 'i-tarn-length-2', 'Stringer 2, cut to length', 19, {
    ...STRINGER,
    firstDay: '2027-06-15',
  }),
  tree('survey-larch', 'h-19', 'i-ridge-stringer-1', 'Stringer tree 1 at the ridge', [17, 78], STRINGER),
  tree('survey-larch', 'h-19', 'i-ridge-stringer-2', 'Stringer tree 2 at the ridge', [17.5, 80], STRINGER),
  log('survey-larch', 'h-19', 'i-ridge-length-1', 'Ridge stringer 1, cut to length', 17, STRINGER),
  log('survey-larch', 'h-19', 'i-ridge-length-2', 'Ridge stringer 2, cut to length', 17.5, STRINGER),
]

const elsewhere: Draft<'items'>[] = [
  // Rated on 9 January: the 180th day is 8 July.
  log('survey-winter', 'h-10', 'i-heron-log', 'Big pine across the flat', 26, {
    species: 'pine',
    firstDay: '2027-07-08',
    lastDay: '2027-07-09',
  }),
  log('survey-larch', 'h-07', 'i-cold-fork-jam', 'Jam at the ford', 22, SPRUCE),
  log('survey-larch', 'h-07', 'i-cold-fork-slide', 'Log above the slide', 24, SPRUCE),
  log('survey-larch', 'h-14', 'i-north-rim-photo', 'Log seen on a photo', 20, FIR),
  log('survey-larch', 'h-15', 'i-upper-quill-told', 'Log that a packer told of', 18, FIR),
  log('survey-larch', 'h-13', 'i-larch-upper-log', 'Upper party: log under tension', 23, {
    place: 'larch-bench-upper',
  }),
  log('survey-larch', 'h-13', 'i-larch-lower-log', 'Lower party: log with a root wad', 25, {
    place: 'larch-bench-lower',
  }),
  tree('survey-larch', 'h-20', 'i-cold-fork-snag', 'Split snag above the ford', [23, 50], {
    ...SPRUCE,
    firstDay: '2027-09-06',
    lastDay: '2027-09-10',
  }),
  unapproved(
    'survey-larch',
    'h-20',
    'i-cold-fork-raised',
    'Spruce that looked sound from the trail',
    [19, 60],
    {
      ...SPRUCE,
      firstDay: '2027-09-06',
      lastDay: '2027-09-10',
    },
  ),
  {
    // On no list, and its worksheet could not be finished: unrated, so not on record for everybody.
    id: 'i-unrated-log',
    recordedIn: entry('survey-larch'),
    name: 'Log under snow at the ridge, not to be seen whole',
    workKind: 'bucking',
    diameter: 20,
    place: 'ridge-bridge',
    hands: 'two',
  },
]

/** The logs and trees that somebody surveyed, one by one. */
export const surveyedItems: Draft<'items'>[] = [...windfall, ...camps, ...bridges, ...elsewhere]
