import { whatToGive } from '../../../lib/usecases/accounts/what-to-give.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { runtime } from '../../../lib/usecases/door/runtime.ts'
import { dayText } from '../../../lib/wording/days.ts'
import { valueForPage } from '../../_door/value-for-page.ts'
import { caller } from '../../_door/visitor.ts'
import { ROLE_CHOICES } from './account-words.ts'
import type { RoleChoices } from './role-fields.client.tsx'

/** What the fields of a role offer today. */
export async function roleChoices(path: string): Promise<RoleChoices> {
  const { units, organisations, today } = valueForPage(
    await callQuery(runtime(), whatToGive, { input: {} }, await caller()),
    path,
  )
  const choices = (of: typeof units) => of.map(({ id, name }) => ({ value: id, label: name }))
  return {
    roles: ROLE_CHOICES,
    units: choices(units),
    organisations: choices(organisations),
    firstDay: dayText(today),
  }
}
