import { z } from 'zod'
import { ROLES } from '../../access/roles.ts'
import { dateField } from '../../core/calendar/dates.schema.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { AccountRoleFact } from '../../store/tables/stored-facts.ts'
import type { FieldProblem } from '../door/outcome.ts'
import type { World } from '../door/use-case.ts'

/** A role as it is to be given: for a unit, an organisation, both, or without either for the whole program. */
export const roleGivenSchema = z.strictObject({
  role: z.enum(ROLES, 'choose a role'),
  unit: z.exactOptional(idField),
  organisation: z.exactOptional(idField),
  firstDay: dateField,
  /** Without one it has no end. */
  lastDay: z.exactOptional(dateField),
})
export type RoleGiven = z.infer<typeof roleGivenSchema>

/** What of a role cannot be so, each at its field below `path` (empty, or with a dot at its end). */
export function roleProblems(
  { snapshot, today }: World,
  { role, unit, organisation, firstDay, lastDay }: RoleGiven,
  path = '',
): FieldProblem[] {
  const { places, organisations } = snapshot.program
  const isUnit = places.some(
    (fact) => fact.id === unit && fact.kind === 'unit' && isKnownAt(fact, snapshot.n),
  )
  const isOrganisation = organisations.some((fact) => fact.id === organisation && isKnownAt(fact, snapshot.n))
  const problems: FieldProblem[] = []
  const tell = (field: string, message: string) => problems.push({ path: `${path}${field}`, message })
  if (role === 'program-manager' && (unit !== undefined || organisation !== undefined)) {
    const field = unit === undefined ? 'organisation' : 'unit'
    tell(field, 'a program manager manages the whole program; choose neither unit nor organisation')
  }
  if (unit !== undefined && !isUnit) tell('unit', 'no unit of this id is on record')
  if (organisation !== undefined && !isOrganisation)
    tell('organisation', 'no organisation of this id is on record')
  if (firstDay < today) tell('firstDay', 'a role begins today at the earliest')
  if (lastDay !== undefined && lastDay < firstDay) tell('lastDay', 'the last day lies before the first')
  return problems
}

/** Whether two roles are the same for the same part of the program, and share a day. */
export function isSameRole(
  one: Omit<RoleGiven, 'role'> & { role: string },
  other: Omit<RoleGiven, 'role'> & { role: string },
): boolean {
  const endsBefore = (last: CalendarDate | undefined, first: CalendarDate) =>
    last !== undefined && last < first
  return (
    one.role === other.role &&
    one.unit === other.unit &&
    one.organisation === other.organisation &&
    !endsBefore(one.lastDay, other.firstDay) &&
    !endsBefore(other.lastDay, one.firstDay)
  )
}

/** The current versions of the roles of an account that nobody ended and that are not over. */
export function rolesStanding(
  { roles, n }: Pick<Snapshot, 'roles' | 'n'>,
  account: string,
  today: CalendarDate,
): readonly AccountRoleFact[] {
  return roles.filter(
    (fact) =>
      fact.account === account &&
      isKnownAt(fact, n) &&
      fact.endedBecause === undefined &&
      (fact.lastDay === undefined || today <= fact.lastDay),
  )
}

/** A fact as it was, to be recorded with changes as the version after it. */
export function corrected<Fact extends { id: string; recordedIn: number }>(fact: Fact, changes: object) {
  const { recordedIn, ...kept } = fact
  return { ...kept, ...changes, supersedes: recordedIn }
}
