/** Compares texts by code unit, so that the order is the same on every machine and in every language. */
export function byText(left: string, right: string): number {
  return left < right ? -1 : left > right ? 1 : 0
}

/** The same items without repeats, sorted by code unit. */
export function sortedTexts(texts: Iterable<string>): string[] {
  return [...new Set(texts)].sort(byText)
}
