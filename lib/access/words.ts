import type { Role } from './roles.ts'
import type { Permission, Reach } from './table.ts'

/** The roles in words. */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  sawyer: 'sawyer',
  'crew-lead': 'crew lead',
  instructor: 'instructor',
  evaluator: 'evaluator',
  filer: 'filer',
  'crew-coordinator': 'crew coordinator',
  'certifying-official': 'certifying official',
  'program-manager': 'program manager',
  auditor: 'auditor',
}

/** What a permission allows, and what it is about: people (then it reaches some of them), or none of them. */
export const PERMISSION_WORDS: Readonly<
  Record<Permission, { says: string; about: 'people' | 'program' | 'anybody' }>
> = {
  'read-standing': { says: 'Ask who may do which work, on which days, and why', about: 'people' },
  'read-record': { says: 'Read the records that authority rests on', about: 'people' },
  'read-books': { says: 'Read the rule books', about: 'anybody' },
  'confirm-rules': { says: 'Confirm, by name, rules that are from memory', about: 'program' },
  'write-people': {
    says: 'Enter and correct people, memberships, permissions and certificates',
    about: 'people',
  },
  'write-cards': { says: 'Enter and correct cards that were carried in', about: 'people' },
  'write-suspensions': { says: 'Enter and correct suspensions', about: 'people' },
  'stand-down': { says: 'Stand people down at once, and record whom it reached', about: 'people' },
  dispute: { says: 'Say that something in your own record is wrong', about: 'people' },
  'answer-disputes': { says: 'Answer people who say that a record of theirs is wrong', about: 'people' },
  'resolve-words': { says: 'Say what words on a card mean', about: 'people' },
  'write-designations': { says: 'Designate instructors and evaluators', about: 'people' },
  'assign-training': { says: 'Assign people to learn on stated work', about: 'people' },
  'write-places': { says: 'Enter and correct organisations, places and orders', about: 'program' },
  'write-work': { says: 'Enter and correct logs, trees and their ratings', about: 'people' },
  'write-hitches': { says: 'Enter and correct hitches, and put people into crews', about: 'people' },
  'adopt-books': { says: 'Adopt a further rule book that ships', about: 'program' },
  'keep-program': { says: 'Set from when the program’s own cards come from decisions', about: 'program' },
  erase: { says: 'Erase the name and age of somebody who works here no more', about: 'people' },
  'read-journal': { says: 'Read the journal', about: 'program' },
  'bring-in-sheets': { says: 'Bring in a sheet of what you may enter, and undo it', about: 'people' },
  'bring-in-program': { says: 'Bring in a program file', about: 'program' },
  'take-out-program': { says: 'Take out the whole program as a file', about: 'program' },
  'keep-own-account': { says: 'Sign in and out, and end your own sessions', about: 'anybody' },
  'manage-accounts': { says: 'Open and close accounts, and give roles', about: 'program' },
}

/** For whom a role was given, by name; without either, for the whole program. */
export type NamedScope = { unit?: string; organisation?: string }

/** A role with its scope: `crew coordinator for Quill River`. */
export function roleText(role: Role, scope: NamedScope): string {
  const within = scopeText(scope)
  return within === undefined ? ROLE_WORDS[role] : `${ROLE_WORDS[role]} for ${within}`
}

/** On whose records a permission may be used: `of people of Quill River`. */
export function reachText(reach: Reach, { unit, organisation }: NamedScope): string {
  if (reach === 'own') return 'for yourself'
  if (reach === 'crew') return 'for the crew of a hitch that you lead, until its last day, and for yourself'
  const scope =
    reach === 'organisation'
      ? organisation === undefined
        ? undefined
        : `${organisation}, in any unit`
      : scopeText({
          ...(unit === undefined ? {} : { unit }),
          ...(organisation === undefined ? {} : { organisation }),
        })
  return scope === undefined ? 'for everybody in the program' : `for people of ${scope}, and for yourself`
}

function scopeText({ unit, organisation }: NamedScope): string | undefined {
  if (unit !== undefined && organisation !== undefined) return `${organisation} in ${unit}`
  return unit ?? organisation
}
