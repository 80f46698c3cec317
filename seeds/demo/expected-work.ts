import type { Complexity } from '../../lib/core/rulebooks/words.ts'
import type { Draft } from './draft.ts'
import { entry } from './entries.ts'
import { hitch, type HitchList } from './hitch-list.ts'

type More = Partial<Draft<'expectedWork'>>

/** Logs that somebody expects on a hitch, nobody having surveyed: so many, so thick at most, so complex at most. */
function logs(
  list: HitchList,
  part: string,
  name: string,
  [least, most]: readonly [number, number],
  diameter: number,
  complexity: Complexity,
  more: More = {},
): Draft<'expectedWork'> {
  const { place, firstDay, lastDay } = hitch(list)
  return {
    id: `x-${list}-${part}`,
    recordedIn: entry('hitches-2027'),
    list,
    name,
    workKind: 'bucking',
    least,
    most,
    diameter,
    complexity,
    place,
    firstDay,
    lastDay,
    hands: 'two',
    ...more,
  }
}

const small = (list: HitchList, count: readonly [number, number], more: More = { hands: 'one' }) =>
  logs(list, 'small', 'Small logs across the trail', count, 12, 'least', more)

const usual = (list: HitchList, count: readonly [number, number], diameter: number, more: More = {}) =>
  logs(list, 'usual', 'Logs across the trail', count, diameter, 'moderate', more)

const UPPER: More = { place: 'larch-bench-upper' }
const LOWER: More = { place: 'larch-bench-lower' }

/** The usual work of most hitches. Where hands are unsaid it counts as two-person. */
export const expectedWork: Draft<'expectedWork'>[] = [
  logs('h-01', 'small', 'Practice logs on the road', [10, 20], 14, 'least', {
    trailOpen: false,
    mayRoll: false,
  }),
  small('h-02', [20, 45]),
  usual('h-02', [15, 30], 26),
  small('h-03', [25, 60]),
  usual('h-03', [20, 40], 30),
  small('h-04', [4, 10], { hands: 'two', trailOpen: false }),
  small('h-05', [15, 35]),
  usual('h-05', [10, 25], 24),
  small('h-06', [6, 12]),
  small('h-07', [30, 70]),
  usual('h-07', [25, 45], 32),
  small('h-08', [15, 30]),
  usual('h-08', [10, 20], 26),
  small('h-09', [20, 50]),
  usual('h-09', [15, 30], 28),
  small('h-10', [20, 40]),
  usual('h-10', [10, 20], 22),
  // Twenty-seven were counted and rated together; nobody gave each a number.
  logs('h-11', 'trail', 'Logs across the trail, 14 to 22 in', [27, 27], 22, 'moderate', {
    lastDay: '2027-07-11',
  }),
  small('h-12', [5, 10]),
  // One that works in two parties, each on its own trail, with its own work.
  logs('h-13', 'upper', 'Upper party: logs across the upper trail', [15, 30], 28, 'moderate', UPPER),
  logs('h-13', 'upper-small', 'Upper party: small logs', [10, 30], 12, 'least', { ...UPPER, hands: 'one' }),
  logs('h-13', 'lower', 'Lower party: logs across the lower trail', [20, 35], 24, 'moderate', LOWER),
  logs('h-13', 'lower-small', 'Lower party: small logs', [20, 40], 12, 'least', { ...LOWER, hands: 'one' }),
  small('h-14', [25, 55]),
  usual('h-14', [20, 40], 30),
  small('h-15', [20, 45]),
  usual('h-15', [15, 30], 26),
  small('h-16', [10, 25]),
  usual('h-16', [10, 20], 36),
  small('h-17', [15, 30]),
  usual('h-17', [10, 25], 26),
  // The cooperator book is in force at Lantern Creek through 13 August; the program's from the day after.
  logs('h-17', 'lantern', 'Logs on the Lantern Creek trail', [10, 20], 22, 'moderate', {
    place: 'lantern-creek',
  }),
  // Cannot be staffed as it stands: the corps has nobody but trainees on these days.
  logs('h-18', 'corps', 'Logs for the corps to cut, two-person', [20, 40], 14, 'least'),
  small('h-19', [4, 10], { hands: 'two', trailOpen: false }),
  small('h-20', [30, 60]),
  usual('h-20', [20, 40], 30),
  small('h-21', [10, 25]),
  usual('h-21', [5, 15], 24),
  small('h-22', [4, 10]),
  small('h-23', [15, 40]),
  usual('h-23', [10, 25], 28),
  logs('h-24', 'small', 'Logs along the road', [10, 25], 16, 'least', { trailOpen: false }),
]
