import type { Complexity, WorkKind } from '../../lib/core/rulebooks/words.ts'
import type { Draft } from './draft.ts'
import { entry } from './entries.ts'

/**
 * A class of the spring at Rough Gate, six to a class, or the one evaluation: the id of its field day's work list, its
 * name, its field days. Waiting lists have no section yet.
 */
type FieldDays = { list: string; name: string; firstDay: string; lastDay: string }

const refresher: FieldDays = {
  list: 'c-01',
  name: 'Refresher',
  firstDay: '2027-05-20',
  lastDay: '2027-05-20',
}
const firstBucking: FieldDays = {
  list: 'c-02',
  name: 'First bucking class',
  firstDay: '2027-05-27',
  lastDay: '2027-05-28',
}
const secondBucking: FieldDays = {
  list: 'c-03',
  name: 'Second bucking class',
  firstDay: '2027-05-31',
  lastDay: '2027-06-01',
}
const felling: FieldDays = {
  list: 'c-04',
  name: 'Felling class',
  firstDay: '2027-06-04',
  lastDay: '2027-06-05',
}
const evaluation: FieldDays = {
  list: 'c-05',
  name: 'Field evaluation',
  firstDay: '2027-06-12',
  lastDay: '2027-06-12',
}

type Stick = readonly [id: string, name: string, diameter: number, complexity: Complexity]

function site({ list, firstDay, lastDay }: FieldDays, workKind: WorkKind, sticks: readonly Stick[]) {
  return sticks.map(([id, name, diameter, complexity]) => ({
    complexity,
    item: {
      id: `i-${list}-${id}`,
      recordedIn: entry('classes-2027'),
      list,
      name,
      workKind,
      diameter,
      place: 'rough-gate',
      firstDay,
      lastDay,
      hands: 'two',
      trailOpen: false,
      mayRoll: false,
      ...(workKind === 'felling'
        ? {
            height: 60,
            approval: {
              by: 'Corwin Achebe-Stroud, unit forester',
              day: '2027-04-28',
              conditions: 'Class trees only.',
            },
          }
        : {}),
    } satisfies Draft<'items'>,
  }))
}

const sites = [
  ...site(refresher, 'bucking', [
    ['log-1', 'Refresher log 1', 14, 'least'],
    ['log-2', 'Refresher log 2', 20, 'moderate'],
  ]),
  ...site(firstBucking, 'bucking', [
    ['log-1', 'Class log 1', 12, 'least'],
    ['log-2', 'Class log 2', 16, 'least'],
    ['log-3', 'Class log 3, with an end bind', 18, 'moderate'],
  ]),
  ...site(secondBucking, 'bucking', [
    ['log-1', 'Class log 4', 14, 'least'],
    ['log-2', 'Class log 5, with a side bind', 20, 'moderate'],
  ]),
  ...site(felling, 'felling', [
    ['tree-1', 'Class tree 1', 20, 'least'],
    ['tree-2', 'Class tree 2', 26, 'least'],
    ['tree-3', 'Class tree 3, leaning', 18, 'moderate'],
  ]),
  ...site(evaluation, 'bucking', [['log-1', 'Evaluation log, with a side bind', 22, 'moderate']]),
]

/** The logs and trees of the field days. */
export const classItems: Draft<'items'>[] = sites.map(({ item }) => item)

/** Each rated on site by the C who laid out the field days. */
export const classRatings: Draft<'ratings'>[] = sites.map(({ item, complexity }) => ({
  id: `r-${item.id.slice(2)}`,
  recordedIn: entry('classes-2027'),
  item: item.id,
  complexity,
  rater: 'p-siobhan-o-briain',
  day: '2027-04-28',
  how: 'on-site',
}))

function places(
  days: FieldDays,
  people: readonly (readonly [person: string, trainers: readonly string[]])[],
) {
  const items = classItems.filter(({ list }) => list === days.list).map(({ id }) => id)
  return people.map(([person, trainers]): Draft<'assignments'> => ({
    id: `a-${days.list}-${person}`,
    recordedIn: entry('classes-2027'),
    person: `p-${person}`,
    items,
    firstDay: days.firstDay,
    lastDay: days.lastDay,
    trainers: trainers.map((trainer) => `p-${trainer}`),
    purpose: `${days.name} at Rough Gate`,
  }))
}

const RENQUIST = ['tobiah-renquist']
const ILIEVSKI = ['bogdan-ilievski']
const FELLERS = ['siobhan-o-briain', 'ifeoma-castellane']

/** Who is on which class, under whom: six to a class. */
export const assignments: Draft<'assignments'>[] = [
  ...places(refresher, [
    ['gwenllian-prosser', ['aurelio-brandt-nakai']],
    ['samir-hadzibegic', ['aurelio-brandt-nakai']],
    ['chidinma-ezeigwe', ['aurelio-brandt-nakai']],
    ['marisol-quiroga-ibanez', RENQUIST],
    // Her card ended on 30 April.
    ['maria-anastasia', RENQUIST],
    // Suspended until 30 June: his training is stopped too.
    ['grigor-tsvetanov', RENQUIST],
  ]),
  ...places(firstBucking, [
    // A candidate with no card.
    ['idris-penhallow', RENQUIST],
    ['eun-ji-baek', RENQUIST],
    ['losa-fonotia', RENQUIST],
    // Their instructor's own card ends six days before the field days.
    ['joao-quintanilha', ILIEVSKI],
    ['mirza-delalic', ILIEVSKI],
    ['ilke-dauwens', ILIEVSKI],
  ]),
  ...places(secondBucking, [
    // Taught here by the one who is to evaluate her on 12 June.
    ['anneli-rautavuoma', RENQUIST],
    ['zeynep-karadagli', RENQUIST],
    ['kirra-ballantyne-oduya', ['siobhan-o-briain']],
    ['senna-vandekerkhove', ['siobhan-o-briain']],
    ['rui-matsuzawa-lobo', ['siobhan-o-briain']],
    ['calla-fenwright', ['siobhan-o-briain']],
  ]),
  ...places(felling, [
    ['nguyen-thi-suong', FELLERS],
    ['tavita-leaupepe', FELLERS],
    ['farida-qosimova', FELLERS],
    ['kaoru-minase', FELLERS],
    ['wulandari', FELLERS],
    ['mbali-kamabaso', FELLERS],
  ]),
  ...places(evaluation, [['anneli-rautavuoma', RENQUIST]]),
]
