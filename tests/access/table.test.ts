import { describe, expect, it } from 'vitest'
import { ROLES, type Role } from '../../lib/access/roles.ts'
import { ACCESS_TABLE, PERMISSIONS, type Permission, type Reach } from '../../lib/access/table.ts'

/** What everybody who works here has: their own record, the rule books, their own account. */
const WORKS_HERE = {
  'read-standing': 'own',
  'read-record': 'own',
  dispute: 'own',
  'read-books': 'program',
  'keep-own-account': 'own',
} as const

/** The table of roles of the design, written out a second time, a row a role: what is not named is refused. */
const BY_ROLE: Readonly<Record<Role, Readonly<Partial<Record<Permission, Reach>>>>> = {
  sawyer: WORKS_HERE,
  'crew-lead': { ...WORKS_HERE, 'read-standing': 'crew', 'stand-down': 'crew' },
  instructor: WORKS_HERE,
  evaluator: WORKS_HERE,
  filer: WORKS_HERE,
  'crew-coordinator': {
    ...WORKS_HERE,
    'read-standing': 'organisation',
    'read-record': 'unit',
    'write-people': 'unit',
    'assign-training': 'unit',
    'write-work': 'unit',
    'write-hitches': 'unit',
    'stand-down': 'unit',
    'answer-disputes': 'unit',
    'bring-in-sheets': 'unit',
  },
  'certifying-official': {
    ...WORKS_HERE,
    'read-standing': 'unit',
    'read-record': 'unit',
    'write-cards': 'unit',
    'write-suspensions': 'unit',
    'stand-down': 'unit',
    'answer-disputes': 'unit',
    'bring-in-sheets': 'unit',
    'resolve-words': 'unit',
    'write-designations': 'unit',
    'read-journal': 'program',
  },
  'program-manager': {
    ...WORKS_HERE,
    'read-standing': 'program',
    'read-record': 'program',
    'confirm-rules': 'program',
    'write-people': 'program',
    'write-cards': 'program',
    'write-suspensions': 'program',
    'write-designations': 'program',
    'assign-training': 'program',
    'write-places': 'program',
    'write-work': 'program',
    'write-hitches': 'program',
    'stand-down': 'program',
    'answer-disputes': 'program',
    'adopt-books': 'program',
    'keep-program': 'program',
    erase: 'program',
    'read-journal': 'program',
    'bring-in-sheets': 'program',
    'bring-in-program': 'program',
    'take-out-program': 'program',
    'manage-accounts': 'program',
  },
  auditor: { 'read-books': 'program', 'keep-own-account': 'own' },
}

describe('the table of access', () => {
  it.each(ROLES)('[P9] gives a %s what the table of roles says, and nothing else', (role) => {
    const given = Object.fromEntries(
      PERMISSIONS.flatMap((permission) => {
        const reach = ACCESS_TABLE[permission][role]
        return reach === undefined ? [] : [[permission, reach] as const]
      }),
    )
    expect(given).toEqual(BY_ROLE[role])
  })
})
