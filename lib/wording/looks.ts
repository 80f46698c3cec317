/** What somebody did when they looked, by the use case that was written down. */
const LOOKS: Readonly<Record<string, string>> = {
  'people/person': 'opened the page of the person',
  'people/my-record': 'opened their own record',
  'people/who-looked': 'looked who had looked',
  'people/about-erasing': 'looked what erasing would do',
  'authority/ask': 'asked who may do work',
  'authority/ask-for-page': 'asked who may do work',
  'people/list': 'looked through people',
  'people/lapses-ahead': 'looked what lapses',
  'program/take-out': 'took the whole program out',
}

/** The same in words; what has none of its own is called by its room. */
export function lookText(useCase: string): string {
  const known = LOOKS[useCase]
  if (known !== undefined) return known
  return useCase.startsWith('records/') ? 'opened a record of the person' : `looked (${useCase})`
}
