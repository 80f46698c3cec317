import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import type { KnownMoment } from '../../lib/core/program/known.ts'
import type { FieldProblem, Outcome } from '../../lib/usecases/door/outcome.ts'
import { readDay } from '../../lib/wording/read-day.ts'
import { readKnown } from '../../lib/wording/read-known.ts'
import { refusalSentence } from '../../lib/wording/refusals.ts'
import { addressWord, type AddressWords } from '../_parts/address.ts'

/** As known when and as of which day, by their names in the address, and what they are called. */
export const THEN_LABELS = { known: 'As known', day: 'As of the day' } as const
export type ThenName = keyof typeof THEN_LABELS

export const THEN_NAMES = Object.keys(THEN_LABELS) as ThenName[]

/** What the address says of then: as typed, as input of a use case as far as it can be read, and what cannot be. */
export type TypedThen = {
  typed: Partial<Record<ThenName, string>>
  input: { knownAt?: KnownMoment; day?: CalendarDate }
  faults: readonly FieldProblem[]
}

/** Reads as known when and as of which day out of an address. */
export function readThen(words: AddressWords): TypedThen {
  const known = addressWord(words, 'known')
  const day = addressWord(words, 'day')
  const knownAt = known === undefined ? undefined : readKnown(known)
  const dayRead = day === undefined ? undefined : readDay(day)
  return {
    typed: { ...(known === undefined ? {} : { known }), ...(day === undefined ? {} : { day }) },
    input: {
      ...(knownAt?.ok === true ? { knownAt: knownAt.value } : {}),
      ...(dayRead?.ok === true ? { day: dayRead.value } : {}),
    },
    faults: [
      ...(knownAt?.ok === false ? [{ path: 'known', message: knownAt.problem }] : []),
      ...(dayRead?.ok === false ? [{ path: 'day', message: dayRead.problem }] : []),
    ],
  }
}

/** What a use case found wrong with its input, at the fields of the page: then itself cannot be, or was not known yet. */
export function thenFaults(outcome: Outcome<unknown>): FieldProblem[] {
  if (outcome.kind === 'invalid') {
    return outcome.fields.map(({ path, message }) => ({ path: thenFieldOf(path), message }))
  }
  return outcome.kind === 'refused' ? [{ path: 'known', message: refusalSentence(outcome.because) }] : []
}

function thenFieldOf(path: string): string {
  return path.startsWith('knownAt') ? 'known' : path
}

/** Whether a field is one of the two. */
export function isThenName(name: string): name is ThenName {
  return Object.hasOwn(THEN_LABELS, name)
}

/** Then without what turned out not to fit the records. */
export function withoutFaulty(
  { knownAt, day }: TypedThen['input'],
  faults: readonly FieldProblem[],
): TypedThen['input'] {
  const isFaulty = (name: ThenName) => faults.some(({ path }) => path === name)
  return {
    ...(knownAt === undefined || isFaulty('known') ? {} : { knownAt }),
    ...(day === undefined || isFaulty('day') ? {} : { day }),
  }
}
