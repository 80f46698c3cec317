import type { Role } from './roles.ts'

/**
 * How far a role reaches with a permission.
 * - `own`: the record of the person behind the account.
 * - `crew`: whoever is in a crew that the person behind the account leads, until the last day of that hitch.
 * - `unit`: people whose membership today lies in the unit and organisation for which the role was given.
 * - `organisation`: people of the role's organisation whatever their unit; everybody, where it names no organisation.
 * - `program`: everything.
 */
export type Reach = 'own' | 'crew' | 'unit' | 'organisation' | 'program'

/** What somebody may be allowed to do, each in the words of the table of roles. */
export const PERMISSIONS = [
  'read-standing',
  'read-record',
  'read-books',
  'confirm-rules',
  'write-people',
  'write-cards',
  'write-suspensions',
  'stand-down',
  'dispute',
  'answer-disputes',
  'resolve-words',
  'write-designations',
  'assign-training',
  'write-places',
  'write-work',
  'write-hitches',
  'adopt-books',
  'keep-program',
  'erase',
  'read-journal',
  'bring-in-sheets',
  'bring-in-program',
  'take-out-program',
  'keep-own-account',
  'manage-accounts',
] as const

export type Permission = (typeof PERMISSIONS)[number]

const everyRole = (reach: Reach): Record<Role, Reach> => ({
  sawyer: reach,
  'crew-lead': reach,
  instructor: reach,
  evaluator: reach,
  filer: reach,
  'crew-coordinator': reach,
  'certifying-official': reach,
  'program-manager': reach,
  auditor: reach,
})

/** Their own record is open to everybody who works here; an auditor has none. */
const OWN = { ...everyRole('own'), auditor: undefined }

/**
 * Who may do what, and on whose record: the one table. What is not named is refused. The reach
 * of an instructor over a class and of an official over a case comes with the records of classes and cases.
 */
export const ACCESS_TABLE: Readonly<Record<Permission, Readonly<Partial<Record<Role, Reach | undefined>>>>> =
  {
    'read-standing': {
      ...OWN,
      'crew-lead': 'crew',
      'crew-coordinator': 'organisation',
      'certifying-official': 'unit',
      'program-manager': 'program',
    },
    'read-record': {
      ...OWN,
      'crew-coordinator': 'unit',
      'certifying-official': 'unit',
      'program-manager': 'program',
    },
    'read-books': everyRole('program'),
    'confirm-rules': { 'program-manager': 'program' },
    'write-people': { 'crew-coordinator': 'unit', 'program-manager': 'program' },
    'write-cards': { 'certifying-official': 'unit', 'program-manager': 'program' },
    'write-suspensions': { 'certifying-official': 'unit', 'program-manager': 'program' },
    'stand-down': {
      'crew-lead': 'crew',
      'crew-coordinator': 'unit',
      'certifying-official': 'unit',
      'program-manager': 'program',
    },
    dispute: OWN,
    'answer-disputes': {
      'crew-coordinator': 'unit',
      'certifying-official': 'unit',
      'program-manager': 'program',
    },
    'resolve-words': { 'certifying-official': 'unit' },
    'write-designations': { 'certifying-official': 'unit', 'program-manager': 'program' },
    'assign-training': { 'crew-coordinator': 'unit', 'program-manager': 'program' },
    'write-places': { 'program-manager': 'program' },
    'write-work': { 'crew-coordinator': 'unit', 'program-manager': 'program' },
    'write-hitches': { 'crew-coordinator': 'unit', 'program-manager': 'program' },
    'adopt-books': { 'program-manager': 'program' },
    'keep-program': { 'program-manager': 'program' },
    erase: { 'program-manager': 'program' },
    'read-journal': { 'program-manager': 'program', 'certifying-official': 'program' },
    'bring-in-sheets': {
      'crew-coordinator': 'unit',
      'certifying-official': 'unit',
      'program-manager': 'program',
    },
    'bring-in-program': { 'program-manager': 'program' },
    'take-out-program': { 'program-manager': 'program' },
    'keep-own-account': everyRole('own'),
    'manage-accounts': { 'program-manager': 'program' },
  }
