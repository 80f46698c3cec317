/**
 * A run of letters written from right to left, spaces, hyphens and apostrophes between them included. A comma ends it:
 * it may belong to the sentence, and stand between two names.
 */
const FROM_RIGHT =
  /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\p{Script=Adlam}](?:(?:[\p{M} \u05BE\u05F3\u05F4'’.-]|\u200C|\u200D)*[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\p{Script=Adlam}\p{M}])*/gu

/**
 * A sentence in which names may stand. A name that runs from right to left is set apart, so that the figures, commas and
 * words after it keep their place.
 */
export function Said({ children }: { children: string }) {
  const parts = []
  let from = 0
  for (const { 0: run, index } of children.matchAll(FROM_RIGHT)) {
    parts.push(children.slice(from, index), <bdi key={index}>{run}</bdi>)
    from = index + run.length
  }
  return from === 0 ? children : [...parts, children.slice(from)]
}

/** Text set apart where no element can do it, as in an option: the marks for it are of Unicode (UAX #9, FSI and PDI). */
export function apart(text: string): string {
  return `\u2068${text}\u2069`
}
