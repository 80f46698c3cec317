import type { CalendarDate } from '../calendar/dates.ts'
import { byText, sortedTexts } from '../kernel/order.ts'
import type { FieldSitting, Seat, Session, Staff } from './courses.schema.ts'

/** The sittings of a session in the field, by day and then by group. */
export function fieldSittings({ sittings }: Pick<Session, 'sittings'>): FieldSitting[] {
  return sittings
    .filter((sitting): sitting is FieldSitting => sitting.setting === 'field')
    .sort((left, right) => byText(left.day, right.day) || byText(left.group, right.group))
}

/** The field days of a session, in order, each once. */
export function fieldDays(session: Pick<Session, 'sittings'>): CalendarDate[] {
  return sortedTexts(fieldSittings(session).map(({ day }) => day)) as CalendarDate[]
}

/** The kinds of work of a sitting that somebody asks for. */
export function kindsAsked(seat: Pick<Seat, 'workKinds'>, sitting: FieldSitting): FieldSitting['workKinds'] {
  return sitting.workKinds.filter((kind) => seat.workKinds.includes(kind))
}

/**
 * The sittings in the field that somebody goes to: those of their group or, where they name none, those that do work
 * they ask for. Two of one day are told as a conflict, not chosen between.
 */
export function sittingsOf(seat: Pick<Seat, 'workKinds' | 'group'>, session: Session): FieldSitting[] {
  return fieldSittings(session).filter(
    (sitting) =>
      (seat.group === undefined || seat.group === sitting.group) && kindsAsked(seat, sitting).length > 0,
  )
}

/** Those on the staff of a session who are with a group on a day. */
export function staffAt(staff: readonly Staff[], session: string, sitting: FieldSitting): Staff[] {
  return staff.filter(
    (one) =>
      one.session === session &&
      one.days.includes(sitting.day) &&
      (one.group === undefined || one.group === sitting.group),
  )
}
