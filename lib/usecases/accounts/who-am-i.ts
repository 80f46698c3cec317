import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { hasPermission, reachesOthers, reachesProgram } from '../../access/reach.ts'
import { PERMISSIONS } from '../../access/table.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import { query } from '../door/use-case.ts'

/** Who is signed in, with which roles, in which program: what the head of every page says. */
export const whoAmI = query({
  name: 'accounts/who-am-i',
  permission: 'keep-own-account',
  input: z.strictObject({}),
  load: ({ snapshot }, _input, actor) => {
    const account = actor === undefined ? undefined : accountOf(snapshot, actor.account)
    return account === undefined ? refusal({ kind: 'sign-in-wanted' }) : success(account)
  },
  about: () => ({ kind: 'own-account' }),
  answer: (account, { snapshot, today, runtime }, actor) => ({
    signInName: account.signInName,
    name: snapshot.program.people.find((one) => one.id === actor?.person && isKnownAt(one, snapshot.n))?.name,
    person: actor?.person,
    roles: actor?.roles ?? [],
    /** What any of the roles may do at all; on whose record is asked at each call. */
    permissions: actor === undefined ? [] : PERMISSIONS.filter((one) => hasPermission(actor, one)),
    /** Those that reach the whole program, and not a unit or an organisation alone. */
    programWide: actor === undefined ? [] : PERMISSIONS.filter((one) => reachesProgram(actor, one)),
    readsOthers: actor !== undefined && reachesOthers(actor, 'read-record'),
    program: snapshot.founded ? snapshot.program.program.name : undefined,
    timeZone: snapshot.founded ? snapshot.program.program.timeZone : undefined,
    today,
    demo: runtime.demo,
    head: snapshot.head,
  }),
})
