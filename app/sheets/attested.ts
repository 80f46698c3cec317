/** What a named person may attest for rows, by the name of its field. */
export const ATTESTED = {
  'attest.ofAge': 'Rows whose person is of age',
  'attest.agreement': 'Rows whose agreement is in force',
  'attest.seen': 'Rows whose certificate was seen',
} as const
