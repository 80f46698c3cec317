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
  'records/list-people': 'looked through records of people',
  'records/hitch': 'looked at the crew of a hitch',
  'records/who-may-counts': 'counted who may do work',
  'authority/people-to-ask': 'chose whom to ask about',
  'sheets/try': 'tried a sheet that names people',
  'sheets/records-as-sheet': 'took records out as a sheet',
  'sheets/about-undoing': 'looked what undoing a sheet would do',
  'program/take-out': 'took the whole program out',
}

/** The same in words; what has none of its own is called by its room. */
export function lookText(useCase: string): string {
  const known = LOOKS[useCase]
  if (known !== undefined) return known
  return useCase.startsWith('records/') ? 'opened a record of the person' : `looked (${useCase})`
}
