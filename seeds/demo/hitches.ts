import type { Draft } from './draft.ts'
import { entry } from './entries.ts'
import { hitch, hitches, type HitchList } from './hitch-list.ts'

/** The crews that are put together so far: the lead first, then the others. */
const CREWS: Partial<Record<HitchList, readonly string[]>> = {
  'h-01': ['tobiah-renquist', 'anneli-rautavuoma', 'dana-whitlow', 'kaoru-minase'],
  'h-03': ['siobhan-o-briain', 'mbali-kamabaso', 'lukasz-wrzos', 'pilar-wetherlam'],
}

/** The hitches of the season of 2027; their work names them as its list. */
export const hitchesOfSeason: Draft<'hitches'>[] = hitches.map((one, at) => {
  const [lead] = CREWS[one.list] ?? []
  return {
    id: one.list,
    recordedIn: entry('hitches-2027'),
    number: String(at + 1),
    name: one.name,
    place: one.place,
    firstDay: one.firstDay,
    lastDay: one.lastDay,
    ...(lead === undefined ? {} : { lead: `p-${lead}` }),
  }
})

/** Who is in which crew so far. */
export const placements: Draft<'placements'>[] = Object.entries(CREWS).flatMap(([list, crew]) => {
  // INVARIANT: the keys of the crews are those of hitches.
  const { firstDay, lastDay } = hitch(list as HitchList)
  return crew.map((person) => ({
    id: `pl-${list}-${person}`,
    recordedIn: entry('hitches-2027'),
    hitch: list,
    person: `p-${person}`,
    firstDay,
    lastDay,
  }))
})
