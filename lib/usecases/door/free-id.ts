/** An id that none of these facts has, whatever its version: the one that is wanted, or with the next free number. */
export function freeId(wanted: string, facts: readonly { id: string }[]): string {
  const taken = new Set(facts.map(({ id }) => id))
  let id = wanted
  for (let next = 2; taken.has(id); next += 1) id = `${wanted}-${next}`
  return id
}
