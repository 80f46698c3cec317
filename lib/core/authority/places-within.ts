import type { Authority } from './authority-index.ts'

/**
 * The places on record that every list allows, a place including what lies in it; of places where the same books are in
 * force and the same suspensions stop the work the first by id stands for all.
 */
export function placesWithin(authority: Authority, lists: readonly (readonly string[])[]): string[] {
  const { places, placeSuspensions, records } = authority
  const books = new Map(records.places.map((place) => [place.id, place.books]))
  const byWhatHolds = new Map<string, string>()
  for (const id of [...books.keys()].sort()) {
    const chain = places.chain(id)
    if (!lists.every((list) => chain.some((upwards) => list.includes(upwards)))) continue
    const stops = chain.flatMap((upwards) =>
      (placeSuspensions.get(upwards) ?? []).map(({ suspension }) => suspension.id),
    )
    const what = JSON.stringify([stops, chain.flatMap((upwards) => books.get(upwards) ?? [])])
    if (!byWhatHolds.has(what)) byWhatHolds.set(what, id)
  }
  return [...byWhatHolds.values()]
}
