import type { z } from 'zod'
import {
  assignmentSchema,
  certificateSchema,
  designationSchema,
  membershipSchema,
  permissionSchema,
  personSchema,
} from '../../lib/core/people/people.schema.ts'
import type {
  Assignment,
  Certificate,
  Designation,
  Membership,
  Permission,
  Person,
} from '../../lib/core/people/people.schema.ts'
import type { Part } from './records.ts'

/** A person, born on 5 May 1985 unless something else is said of the age. */
export function person(id: string, said: Partial<z.input<typeof personSchema>> = {}): Person {
  const age = 'birthDate' in said || 'ofAgeFrom' in said ? {} : { birthDate: '1985-05-05' }
  return personSchema.parse({ id, recordedIn: 1, name: `Invented ${id}`, ...age, ...said })
}

/** A person of whose age nothing is on record. */
export function ageless(id: string): Person {
  return personSchema.parse({ id, recordedIn: 1, name: `Invented ${id}` })
}

/** A membership, of an employee without stated days unless said otherwise. */
export function membership(of: string, said: Partial<z.input<typeof membershipSchema>> = {}): Membership {
  return membershipSchema.parse({
    id: `membership-${of}`,
    recordedIn: 1,
    person: of,
    organisation: 'agency',
    capacity: 'employee',
    ...said,
  })
}

/** A certificate from 2026 through 2030, taken in person and seen by somebody else. */
export function certificate(
  of: string,
  subject: string,
  said: Partial<z.input<typeof certificateSchema>> = {},
): Certificate {
  return certificateSchema.parse({
    id: `${subject}-${of}`,
    recordedIn: 1,
    person: of,
    subject,
    issuedBy: 'Invented Rescue School',
    delivery: 'in-person',
    firstDay: '2026-01-01',
    lastDay: '2030-12-31',
    seen: true,
    by: 'Invented Reader',
    ...said,
  })
}

/** First aid and CPR, both current. */
export function certificates(of: string): Certificate[] {
  return [certificate(of, 'first-aid'), certificate(of, 'cpr')]
}

/** What a guardian said, given from the start of 2026 unless said otherwise. */
export function permission(of: string, said: Partial<z.input<typeof permissionSchema>> = {}): Permission {
  return permissionSchema.parse({
    id: `permission-${of}`,
    recordedIn: 1,
    person: of,
    says: 'given',
    firstDay: '2026-01-01',
    ...said,
  })
}

/** A designation as instructor for federal level C, both work kinds, crosscut, from the start of 2026. */
export function designation(of: string, said: Partial<z.input<typeof designationSchema>> = {}): Designation {
  return designationSchema.parse({
    id: `designation-${of}`,
    recordedIn: 1,
    person: of,
    role: 'instructor',
    book: 'federal-crosscut',
    level: 'C',
    workKinds: ['bucking', 'felling'],
    sawKind: 'crosscut',
    firstDay: '2026-01-01',
    by: 'Invented Manager',
    ...said,
  })
}

/** An assignment to learn on items under trainers, on 5 June 2027 unless said otherwise. */
export function assignment(
  of: string,
  items: string[],
  trainers: string[],
  said: Partial<z.input<typeof assignmentSchema>> = {},
): Assignment {
  return assignmentSchema.parse({
    id: `assignment-${of}`,
    recordedIn: 1,
    person: of,
    items,
    trainers,
    firstDay: '2027-06-05',
    lastDay: '2027-06-05',
    ...said,
  })
}

/** An adult employee with first aid and CPR current, of whom a part of the facts may be said otherwise. */
export function adult(id: string, said: Part = {}): Part {
  return {
    people: [person(id)],
    memberships: [membership(id)],
    certificates: certificates(id),
    ...said,
  }
}
