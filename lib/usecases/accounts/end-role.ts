import { z } from 'zod'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { dateField } from '../../core/calendar/dates.schema.ts'
import { idField, textField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { AccountRoleFact } from '../../store/tables/stored-facts.ts'
import type { NewFact } from '../../store/write.ts'
import { invalidField, refusedBecause, type NotDone } from '../door/outcome.ts'
import { command, nothingToPrepare } from '../door/use-case.ts'
import { leavesNoManager, managingRoles } from './last-manager.ts'
import { corrected } from './role-given.ts'

type Ended = { account: string; role: string; isAtOnce: boolean; record: NewFact }

/**
 * Ends a role at once, or sets the last day on which it counts. At once means from the next request on: sessions are
 * looked up at each. Nobody is left without a program manager.
 */
export const endRole = command({
  name: 'accounts/end-role',
  permission: 'manage-accounts',
  input: z.strictObject({
    account: idField,
    role: idField,
    version: entryNumber,
    /** The last day on which it counts; at once, where none is named. */
    lastDay: z.exactOptional(dateField),
    because: textField,
  }),
  prepare: nothingToPrepare,
  load: async (world, _prepared, { account, role: id }) => {
    const { roles, n } = world.snapshot
    const role = roles.find((fact) => fact.id === id && fact.account === account && isKnownAt(fact, n))
    return success({ role, managing: await managingRoles(world) })
  },
  about: (_facts, { account }) => ({ kind: 'accounts', accounts: [account] }),
  seen: ({ role }, { version }) => (role === undefined ? undefined : { version, current: role }),
  decide: ({ role, managing }, { lastDay, because }, { today }): Result<Ended, NotDone> => {
    if (role === undefined) return refusal({ kind: 'not-found' })
    if (isOver(role, today)) return refusal(refusedBecause({ kind: 'role-ended-already' }))
    const wrong = lastDay === undefined ? undefined : lastDayProblem(role, lastDay, today)
    if (wrong !== undefined) return refusal(invalidField('lastDay', wrong))
    if (leavesNoManager(managing, [role])) return refusal(refusedBecause({ kind: 'last-manager' }))
    const isAtOnce = lastDay === undefined
    return success({
      account: role.account,
      role: role.role,
      isAtOnce,
      record: {
        section: 'accountRoles',
        fact: corrected(role, isAtOnce ? { endedBecause: because } : { lastDay, because }),
      },
    })
  },
  save: ({ record }) => [{ changes: { record: [record], withdraw: [] } }],
  journal: ({ account, role, isAtOnce }) => ({
    event: isAtOnce ? 'role-ended' : 'role-shortened',
    said: { account, role },
  }),
  value: ({ account }) => ({ account }),
})

function isOver({ endedBecause, lastDay }: AccountRoleFact, today: CalendarDate): boolean {
  return endedBecause !== undefined || (lastDay !== undefined && lastDay < today)
}

function lastDayProblem(
  { firstDay, lastDay: before }: AccountRoleFact,
  lastDay: CalendarDate,
  today: CalendarDate,
): string | undefined {
  if (lastDay < today) return 'this day is over; end the role at once instead'
  if (lastDay < firstDay) return 'the role has not begun by then; end it at once instead'
  if (before !== undefined && lastDay >= before)
    return 'the role ends by then anyhow; give the role anew where it is to last longer'
  return undefined
}
