import type { GrantedRole, Role } from '../../lib/access/roles.ts'

const WORDS: Readonly<Record<Role, string>> = {
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

/** A role in words, and how far it reaches. */
export function roleWords({ role, unit, organisation }: GrantedRole): string {
  if (unit !== undefined && organisation !== undefined)
    return `${WORDS[role]} for one organisation in one unit`
  if (unit !== undefined) return `${WORDS[role]} for one unit`
  if (organisation !== undefined) return `${WORDS[role]} for one organisation`
  return WORDS[role]
}
