import { dateOf } from '../../lib/core/calendar/dates.ts'
import type { Finding } from '../../lib/core/authority/answer.ts'
import type { CourseNames } from '../../lib/wording/courses.ts'
import { RULE, someNames } from './sentence-checks.ts'

/** The names of a small program, with a session and a module. */
export const names: CourseNames = {
  ...someNames(),
  session: (id) => (id === 's-2' ? 'the second class' : id),
  module: (id) => (id === 'size-up' ? 'Size-up' : id),
}
/** The day of the samples, and how it is written. */
export const day = dateOf('2027-06-05')
export const DAY = '5 June 2027'
/** A finding of the engine, and its sentence. */
export const lapsed: Finding = {
  kind: 'certificate-lapsed',
  subject: 'cpr',
  lastDay: dateOf('2027-06-04'),
  rule: RULE,
  records: [],
  allows: 'none',
}
export const LAPSED = 'The last day of CPR is 4 June 2027.'

/** For each kind some samples with the words that their sentence contains. */
type Samples<Union extends { kind: string }> = {
  [Kind in Union['kind']]: readonly [Omit<Extract<Union, { kind: Kind }>, 'kind'>, ...string[]][]
}
/** Each sample with its kind and its words, for a table of tests. */
export function rows<Union extends { kind: string }>(samples: Samples<Union>) {
  return Object.entries(samples as Record<string, readonly [object, ...string[]][]>).flatMap(
    ([kind, ofKind]) =>
      ofKind.map(([figures, ...words]) => ({ kind, words, one: { kind, ...figures } as unknown as Union })),
  )
}
