/** What finding a version asks of a fact: the entry in which it became known and, where it did, ceased to be. */
type Recorded = { fact: { recordedIn: number; supersededIn?: number } }

/** How many versions were recorded in entry `n` or before, of versions that stand earliest recorded first. */
export function countRecordedBy(versions: readonly Recorded[], n: number): number {
  let low = 0
  let high = versions.length
  while (low < high) {
    const middle = (low + high) >> 1
    const version = versions[middle]
    if (version !== undefined && version.fact.recordedIn <= n) low = middle + 1
    else high = middle
  }
  return low
}

/**
 * For each version the one that counts longest among it and those before, so that one look says whether any of them
 * still counts. In a good file each version ends before the next, and that is the version itself.
 */
export function longestSoFar<Version extends Recorded>(versions: readonly Version[]): Version[] {
  let longest: Version | undefined
  return versions.map((version) => {
    if (longest === undefined || endOf(version) > endOf(longest)) longest = version
    return longest
  })
}

/** Whether there is an entry as known at which both versions are current. */
export function areKnownTogether(one: Recorded, other: Recorded): boolean {
  return one.fact.recordedIn < endOf(other) && other.fact.recordedIn < endOf(one)
}

/** The entry in which a version ceased to be known. */
export function endOf({ fact }: Recorded): number {
  return fact.supersededIn ?? Infinity
}
