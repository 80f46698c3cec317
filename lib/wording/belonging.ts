import type { Membership } from '../core/people/people.schema.ts'
import type { Names } from './names.ts'

/** Whom a membership is with and where: `with Ashlar Range, agency staff, at North Ashlar`. */
export function belongingText({ organisation, unit }: Membership, names: Names): string {
  const at = unit === undefined ? '' : `, at ${names.place(unit)}`
  return `with ${names.organisation(organisation)}${at}`
}
