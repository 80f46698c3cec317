import type { AskedWork } from './asked-work.ts'
import type { Sensitivity } from './person-index.ts'

/** Some work with the number of what is the same for whoever is asked: its kind, its saw kind, what governs it. */
export type ClassedWork = { asked: AskedWork; governed: number }

/**
 * The class of each work, by its number: works of one class are judged alike for whoever is sensitive so, their
 * complexity apart.
 */
export function classesOf(works: readonly ClassedWork[], sensitivity: Sensitivity): readonly number[] {
  const numbers = new Map<string, number>()
  return works.map(({ asked, governed }) => {
    const key = sensitivity.key === '' ? String(governed) : `${governed}|${sensedOf(asked, sensitivity)}`
    const known = numbers.get(key)
    if (known !== undefined) return known
    numbers.set(key, numbers.size)
    return numbers.size - 1
  })
}

function sensedOf({ work, places }: AskedWork, sensitivity: Sensitivity): string {
  const { diameter, species, hands, items } = sensitivity
  const over = diameter !== undefined && work.diameter > diameter ? work.diameter : ''
  const named = places?.filter((place) => sensitivity.places.has(place)) ?? 'none'
  const item = work.item !== undefined && items.has(work.item) ? work.item : ''
  const kind = species ? (work.species ?? null) : ''
  // Names may hold any sign, and are written so that no two lists of them read alike; mostly there are none.
  const names = named.length === 0 && item === '' && kind === '' ? '' : JSON.stringify([named, item, kind])
  return `${over}|${hands ? (work.hands ?? 'none') : ''}|${names}`
}
