import { z } from 'zod'
import { signInNameField } from '../../access/sign-in-name.schema.ts'
import { textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { NewFact } from '../../store/write.ts'
import { freeId } from '../door/free-id.ts'
import { invalidField, refusedBecause, type FieldProblem, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare, type World } from '../door/use-case.ts'
import { nameOf } from '../journal/entry-words.ts'
import { makeAccountLink, newCodeField } from './account-link.ts'
import { personMeant, signInNameOf } from './person-meant.ts'
import { isSameRole, roleGivenSchema, roleProblems, type RoleGiven } from './role-given.ts'

const MOST_ROLES = 9

const input = z.strictObject({
  signInName: signInNameField,
  /** Who that is on record, by name or id. */
  person: z.exactOptional(z.string().max(200, 'a name has at most 200 letters')),
  roles: z
    .array(roleGivenSchema)
    .min(1, 'choose a role')
    .max(MOST_ROLES, `at most ${MOST_ROLES} roles at once`),
  because: textField,
  code: newCodeField,
})
type Input = z.infer<typeof input>

type Given = { account: string; code: string; record: readonly NewFact[] }

/**
 * Gives somebody an account with its roles, and makes the link that works once by which they set their password. The
 * one who gives it never knows the password.
 */
export const giveAccount = command({
  name: 'accounts/give',
  permission: 'manage-accounts',
  stepUp: true,
  input,
  prepare: nothingToPrepare,
  // The id says nothing of who it is: it stands in the journal, where names do not.
  load: (world) => success({ id: freeId(`account-${world.snapshot.n + 1}`, world.snapshot.accounts) }),
  about: ({ id }) => ({ kind: 'accounts', accounts: [id] }),
  decide: ({ id }, typed, world, actor): Result<Given, NotDone> => {
    const { snapshot } = world
    const { signInName, code, because } = typed
    if (isSignInNameTaken(snapshot, signInName))
      return refusal(refusedBecause({ kind: 'sign-in-name-taken', name: signInName }))
    const person = personOf(snapshot, typed)
    if (!person.ok) return refusal(invalidField('person', person.problem))
    const problems = rolesProblems(world, typed.roles)
    if (problems.length > 0) return refusal({ kind: 'invalid', fields: problems })
    const by = nameOf(snapshot, actor?.account)
    const account: NewFact = {
      section: 'accounts',
      fact: { id, signInName, ...person.value, founding: false, closed: false, because },
    }
    const roles = typed.roles.map((given, at): NewFact => ({
      section: 'accountRoles',
      fact: {
        id: freeId(`role-${snapshot.n + 1}-${at + 1}`, snapshot.roles),
        account: id,
        ...given,
        by,
        because,
      },
    }))
    return success({ account: id, code, record: [account, ...roles] })
  },
  save: ({ record }) => [{ changes: { record, withdraw: [] } }],
  journal: ({ account }) => ({ event: 'account-given', said: { account } }),
  desk: (given, desk, { realNow }) => makeAccountLink(desk, given, realNow),
  value: ({ account }) => ({ account }),
})

/** The name of an ended account stays taken: it can be opened again, and the journal knows it by that name. */
function isSignInNameTaken({ accounts, n }: Snapshot, signInName: string): boolean {
  return accounts.some((one) => one.signInName === signInName && isKnownAt(one, n))
}

function personOf(snapshot: Snapshot, { person: typed }: Input): Result<{ person?: string }, string> {
  if (typed === undefined) return success({})
  const meant = personMeant(snapshot, typed)
  if (!meant.ok) return meant
  const other = signInNameOf(snapshot, meant.value)
  return other === undefined
    ? success({ person: meant.value })
    : refusal(`this person has an account already, ${other}; a person has one account`)
}

function rolesProblems(world: World, roles: readonly RoleGiven[]): FieldProblem[] {
  return roles.flatMap((given, at) => {
    const path = `roles.${at}.`
    const isTwice = roles.slice(0, at).some((before) => isSameRole(before, given))
    return [
      ...roleProblems(world, given, path),
      ...(isTwice
        ? [{ path: `${path}role`, message: 'this role stands above already, for the same days' }]
        : []),
    ]
  })
}
