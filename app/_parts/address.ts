/** What stands after the question mark of an address, as a page is handed it. */
export type AddressWords = Readonly<Record<string, string | readonly string[] | undefined>>

/** One word of an address; of several under one name the first, and nothing where it is empty. */
export function addressWord(words: AddressWords, name: string): string | undefined {
  const value = words[name]
  const first = typeof value === 'string' ? value : value?.[0]
  return first === undefined || first.trim() === '' ? undefined : first.trim()
}

/** An address with some of its words set anew (or, where undefined, left out) and all others kept. */
export function addressWith(
  path: string,
  words: AddressWords,
  changes: Readonly<Record<string, string | undefined>>,
): string {
  const kept = Object.entries(words).flatMap(([name, value]) =>
    Object.hasOwn(changes, name) || value === undefined
      ? []
      : (typeof value === 'string' ? [value] : value).map((each) => [name, each] as const),
  )
  const set = Object.entries(changes).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, value] as const],
  )
  const text = new URLSearchParams([...kept, ...set].map(([name, value]) => [name, value])).toString()
  return text === '' ? path : `${path}?${text}`
}
