import { describe, expect, it } from 'vitest'
import { accountNamed, accountOf, actorOfAccount, rolesOn, type Grants } from '../../lib/access/actors.ts'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'

const day = (text: string) => text as CalendarDate

// Invented accounts: one that is open, one that was closed in entry 3, one whose name was corrected in entry 4.
const grants: Grants = {
  n: 5,
  accounts: [
    { id: 'ada', signInName: 'ada', person: 'p-ada', founding: false, closed: false, recordedIn: 1 },
    { id: 'bo', signInName: 'bo', founding: false, closed: false, recordedIn: 2, supersededIn: 3 },
    { id: 'bo', signInName: 'bo', founding: false, closed: true, recordedIn: 3, supersedes: 2 },
    { id: 'cy', signInName: 'before', founding: false, closed: false, recordedIn: 2, supersededIn: 4 },
    { id: 'cy', signInName: 'after', founding: false, closed: false, recordedIn: 4, supersedes: 2 },
  ],
  roles: [
    {
      id: 'ada-manages',
      account: 'ada',
      role: 'program-manager',
      firstDay: day('2027-04-01'),
      lastDay: day('2027-05-03'),
      by: 'somebody',
      recordedIn: 1,
    },
    {
      id: 'ada-coordinates',
      account: 'ada',
      role: 'crew-coordinator',
      unit: 'north',
      firstDay: day('2027-05-04'),
      by: 'somebody',
      recordedIn: 1,
    },
    {
      id: 'ada-files',
      account: 'ada',
      role: 'filer',
      firstDay: day('2020-01-01'),
      by: 'somebody',
      recordedIn: 1,
      supersededIn: 2,
    },
    {
      id: 'ada-flies',
      account: 'ada',
      role: 'a role of a later version',
      firstDay: day('2020-01-01'),
      by: 'somebody',
      recordedIn: 1,
    },
    {
      id: 'bo-manages',
      account: 'bo',
      role: 'program-manager',
      firstDay: day('2020-01-01'),
      by: 'somebody',
      recordedIn: 2,
    },
  ],
}

describe('who an account is on a day', () => {
  it.each([
    { on: '2027-03-31', roles: [], why: 'the day before the first' },
    { on: '2027-04-01', roles: ['program-manager'], why: 'the first day' },
    { on: '2027-05-03', roles: ['program-manager'], why: 'the last day' },
    { on: '2027-05-04', roles: ['crew-coordinator'], why: 'the day after the last' },
  ])('[P9] $why gives $roles', ({ on, roles }) => {
    expect(rolesOn(grants, 'ada', day(on)).map(({ role }) => role)).toEqual(roles)
    expect(actorOfAccount(grants, 'ada', day(on))).toMatchObject({ account: 'ada', person: 'p-ada' })
  })

  it('[P9] a closed account is nobody: neither by its id nor by its name', () => {
    expect(accountOf(grants, 'bo')).toMatchObject({ closed: true })
    expect(actorOfAccount(grants, 'bo', day('2027-05-03'))).toBeUndefined()
    expect(accountNamed(grants, 'bo')).toBeUndefined()
  })

  it('a name that was corrected is nobody’s, and what is not there is nobody', () => {
    expect(accountNamed(grants, 'after')?.id).toBe('cy')
    expect(accountNamed(grants, 'before')).toBeUndefined()
    expect(actorOfAccount(grants, 'dee', day('2027-05-03'))).toBeUndefined()
  })

  it('a role carries the unit for which it was given', () => {
    expect(rolesOn(grants, 'ada', day('2027-05-04'))).toEqual([{ role: 'crew-coordinator', unit: 'north' }])
  })
})
