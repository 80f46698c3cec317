import type { z } from 'zod'
import { openRecords } from '../../../lib/core/authority/ask.ts'
import type { Authority } from '../../../lib/core/authority/authority-index.ts'
import {
  attendanceSchema,
  seatSchema,
  sessionSchema,
  staffSchema,
  type Attendance,
  type Seat,
  type Session,
  type Sitting,
  type Staff,
} from '../../../lib/core/courses/courses.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult, designation } from '../../builders/people.ts'
import { records, type Part } from '../../builders/records.ts'
import { item, place, rating } from '../../builders/work.ts'

/** A class of bucking at the yard: the classroom on 4 June 2027, the field with one group on the 5th. */
export function session(said: Partial<z.input<typeof sessionSchema>> = {}): Session {
  return sessionSchema.parse({
    id: 's-1',
    recordedIn: 1,
    name: 'Invented class',
    form: 'class',
    place: 'yard',
    firstDay: '2027-06-04',
    lastDay: '2027-06-05',
    workKinds: ['bucking'],
    sawKind: 'crosscut',
    modules: [],
    sittings: [classroom('2027-06-04', ['safety', 'protective-equipment', 'saws']), field('2027-06-05')],
    ...said,
  })
}

export function classroom(
  day: string,
  modules: string[] = [],
): z.input<typeof sessionSchema>['sittings'][number] {
  return { setting: 'classroom', day, modules }
}

export function field(
  day: string,
  group = 'g-1',
  workKinds: ('bucking' | 'felling')[] = ['bucking'],
  modules: string[] = [],
): z.input<typeof sessionSchema>['sittings'][number] &
  Pick<Extract<Sitting, { setting: 'field' }>, 'setting'> {
  return { setting: 'field', day, group, workKinds, modules }
}

/** Somebody asks for A in bucking on 1 April 2027, on line 1. */
export function seat(person: string, said: Partial<z.input<typeof seatSchema>> = {}): Seat {
  return seatSchema.parse({
    id: `seat-${person}`,
    recordedIn: 1,
    session: 's-1',
    person,
    askedOn: '2027-04-01',
    line: 1,
    workKinds: ['bucking'],
    level: 'A',
    ...said,
  })
}

/** Somebody instructs on 5 June 2027. */
export function staff(person: string, said: Partial<z.input<typeof staffSchema>> = {}): Staff {
  return staffSchema.parse({
    id: `staff-${person}`,
    recordedIn: 1,
    session: 's-1',
    person,
    role: 'instructor',
    days: ['2027-06-05'],
    ...said,
  })
}

/** A sheet says that somebody was at a module on 4 June 2027. */
export function attended(
  person: string,
  module: string,
  said: Partial<z.input<typeof attendanceSchema>> = {},
): Attendance {
  return attendanceSchema.parse({
    id: `at-${person}-${module}-${said.day ?? ''}${said.was ?? ''}`,
    recordedIn: 1,
    session: 's-1',
    person,
    module,
    day: '2027-06-04',
    was: 'present',
    ...said,
  })
}

/** A C for both kinds of work, designated as instructor without an end. */
export function trainer(id: string, said: Part = {}): Part {
  return adult(id, {
    cards: [card(id, 'C', { workKinds: ['bucking', 'felling'] })],
    designations: [designation(id)],
    ...said,
  })
}

/** A log (or what is said) of 20 in. on the list of a session, rated on site by the trainer `c-1`. */
export function listed(
  id: string,
  complexity: 'least' | 'moderate' | 'high' | 'not-rated' = 'least',
  said: Parameters<typeof item>[1] = {},
): Part {
  return {
    items: [item(id, { list: 's-1', place: 'yard', ...said })],
    ratings: complexity === 'not-rated' ? [] : [rating(id, complexity, 'c-1', '2027-05-20')],
  }
}

/** The facts, with the yard, opened. */
export function opened(...parts: readonly Part[]): Authority {
  const yard = { places: [place('all', { kind: 'program' }), place('yard', { parent: 'all' })] }
  return openRecords(records(yard, ...parts))
}
