import { describe, expect, it } from 'vitest'
import { hasPermission, peopleInReach, reachesProgram } from '../../lib/access/reach.ts'
import { ROLES, type Actor, type GrantedRole } from '../../lib/access/roles.ts'
import { ACCESS_TABLE, PERMISSIONS } from '../../lib/access/table.ts'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { Hitch, Placement } from '../../lib/core/work/hitches.schema.ts'
import { JoinedPeople } from '../../lib/core/people/joined-people.ts'
import type { Membership } from '../../lib/core/people/people.schema.ts'
import type { Place } from '../../lib/core/work/work.schema.ts'

// Invented people: two of one unit, one of a place below it, one of another unit, one whose agreement has ended, and three whose days begin or end about today.
const today = '2027-05-03' as CalendarDate
const member = (person: string, organisation: string, unit: string, more: Partial<Membership> = {}) => ({
  id: `m-${person}`,
  recordedIn: 1,
  person,
  organisation,
  unit,
  capacity: 'volunteer' as const,
  ...more,
})
const led = (id: string, lead: string, firstDay: string, lastDay: string): Hitch => ({
  id,
  recordedIn: 1,
  number: '1',
  name: 'Invented',
  place: 'north-camp',
  firstDay: firstDay as CalendarDate,
  lastDay: lastDay as CalendarDate,
  lead,
})
const placed = (hitch: string, person: string): Placement => ({
  id: `${hitch}-${person}`,
  recordedIn: 1,
  hitch,
  person,
  firstDay: today,
  lastDay: today,
})
const belonging = {
  places: [
    { id: 'range', recordedIn: 1, name: 'The range', kind: 'program' },
    { id: 'north', recordedIn: 1, name: 'North', kind: 'unit', parent: 'range' },
    { id: 'north-camp', recordedIn: 1, name: 'North camp', kind: 'place', parent: 'north' },
    { id: 'south', recordedIn: 1, name: 'South', kind: 'unit', parent: 'range' },
  ] satisfies Place[],
  // Zoe leads one that runs today, one of the past, and one to come; somebody else leads another.
  hitches: [
    led('h-now', 'zoe', '2027-05-01', '2027-05-03'),
    led('h-past', 'zoe', '2027-04-20', '2027-05-02'),
    led('h-next', 'zoe', '2027-06-01', '2027-06-05'),
    led('h-other', 'ada', '2027-05-01', '2027-05-05'),
  ],
  placements: [
    placed('h-now', 'bo'),
    placed('h-past', 'cy'),
    placed('h-next', 'di'),
    placed('h-other', 'flo'),
  ],
  memberships: [
    member('ada', 'staff', 'north'),
    member('bo', 'volunteers', 'north'),
    member('cy', 'volunteers', 'north-camp'),
    member('di', 'staff', 'south'),
    member('ed', 'staff', 'north', { lastDay: '2027-05-02' as CalendarDate }),
    member('flo', 'staff', 'south', { lastDay: today }),
    member('gus', 'staff', 'south', { firstDay: today }),
    member('hal', 'staff', 'south', { firstDay: '2027-05-04' as CalendarDate }),
  ],
  joined: new JoinedPeople([]),
}

const actor = (...roles: GrantedRole[]): Actor => ({ account: 'an-account', person: 'zoe', roles })
const reach = (permission: (typeof PERMISSIONS)[number], ...roles: GrantedRole[]) => {
  const people = peopleInReach(actor(...roles), permission, belonging, today)
  return people === 'everybody' ? people : [...people].sort()
}

describe('whose records a role reaches', () => {
  it('reaches every record that was joined to one that it reaches, and not the other way round', () => {
    const join = (person: string, stays: string) => ({
      id: 'j-1',
      recordedIn: 1,
      because: 'Invented.',
      person,
      stays,
    })
    const reached = (person: string, stays: string) => {
      const joined = new JoinedPeople([join(person, stays)])
      const roles: GrantedRole[] = [{ role: 'crew-coordinator', unit: 'north' }]
      const people = peopleInReach(actor(...roles), 'read-record', { ...belonging, joined }, today)
      return people === 'everybody' ? people : [...people].sort()
    }
    const alone = ['ada', 'bo', 'cy', 'zoe']
    expect(reach('read-record', { role: 'crew-coordinator', unit: 'north' })).toEqual(alone)
    expect(reached('nobody-else', 'ada')).toEqual([...alone, 'nobody-else'].sort())
    // Whose record was joined to one outside the unit still belongs where a membership of theirs is.
    expect(reached('ada', 'outside')).toEqual([...alone, 'outside'].sort())
    expect(reached('gus', 'flo')).toEqual(alone)
  })

  it('a sawyer reads their own standing and record, and nobody else’s', () => {
    expect(reach('read-standing', { role: 'sawyer' })).toEqual(['zoe'])
    expect(reach('read-record', { role: 'sawyer' })).toEqual(['zoe'])
  })

  it('a coordinator of a unit reads records of the unit and what lies in it, and the standings of everybody', () => {
    expect(reach('read-record', { role: 'crew-coordinator', unit: 'north' })).toEqual([
      'ada',
      'bo',
      'cy',
      'zoe',
    ])
    expect(reach('read-standing', { role: 'crew-coordinator', unit: 'north' })).toBe('everybody')
  })

  it('a coordinator of a partner sees the people of that partner alone', () => {
    const partner = { role: 'crew-coordinator', organisation: 'volunteers' } as const
    expect(reach('read-standing', partner)).toEqual(['bo', 'cy', 'zoe'])
    expect(reach('read-record', partner)).toEqual(['bo', 'cy', 'zoe'])
  })

  it('a lead reaches the crews of their own hitches until the last day of each, and no record', () => {
    expect(reach('read-standing', { role: 'crew-lead' })).toEqual(['bo', 'di', 'zoe'])
    expect(reach('stand-down', { role: 'crew-lead' })).toEqual(['bo', 'di', 'zoe'])
    expect(reach('read-record', { role: 'crew-lead' })).toEqual(['zoe'])
  })

  it('unit and organisation of one role bind together, two roles add up', () => {
    const both = { role: 'crew-coordinator', unit: 'north', organisation: 'staff' } as const
    expect(reach('read-record', both)).toEqual(['ada', 'zoe'])
    expect(reach('read-record', both, { role: 'certifying-official', unit: 'south' })).toEqual([
      'ada',
      'di',
      'flo',
      'gus',
      'zoe',
    ])
  })

  it('a membership that ended yesterday puts nobody within reach, nor one that begins tomorrow', () => {
    expect(reach('read-record', { role: 'crew-coordinator', unit: 'north' })).not.toContain('ed')
    const south = reach('read-record', { role: 'crew-coordinator', unit: 'south' })
    expect(south).toEqual(['di', 'flo', 'gus', 'zoe'])
  })

  it('a manager of the whole program reaches everybody, one of a unit does not reach the program', () => {
    expect(reach('read-record', { role: 'program-manager' })).toBe('everybody')
    expect(reachesProgram(actor({ role: 'program-manager' }), 'bring-in-program')).toBe(true)
    expect(reachesProgram(actor({ role: 'program-manager', unit: 'north' }), 'bring-in-program')).toBe(false)
  })

  it('an auditor reads no standing and no record, and nobody without a role reads anything', () => {
    expect(hasPermission(actor({ role: 'auditor' }), 'read-standing')).toBe(false)
    expect(PERMISSIONS.filter((permission) => hasPermission(actor(), permission))).toEqual([])
  })

  it('only a program manager brings in, takes out and manages accounts', () => {
    for (const permission of ['bring-in-program', 'take-out-program', 'manage-accounts'] as const) {
      expect(ROLES.filter((role) => ACCESS_TABLE[permission][role] !== undefined)).toEqual([
        'program-manager',
      ])
    }
  })
})
