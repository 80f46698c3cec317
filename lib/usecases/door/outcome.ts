import type { Refusal } from '../../wording/refusals.ts'

/** What is wrong with one field of the input: its path (`days.first`, empty for the whole) and a plain sentence. */
export type FieldProblem = { path: string; message: string }

/** How a use case ended. Whatever it is but `done`, nothing was changed. */
export type Outcome<Value> =
  | { kind: 'done'; value: Value }
  | { kind: 'invalid'; fields: readonly FieldProblem[] }
  | { kind: 'refused'; because: Refusal }
  /** What the command meant to correct was corrected by somebody else first. */
  | { kind: 'stale' }
  | { kind: 'not-found' }
  /** Nobody is signed in. */
  | { kind: 'sign-in-wanted' }
  /** The password is wanted again before this. */
  | { kind: 'password-wanted' }
  | { kind: 'forbidden' }

/** What a decision may be besides itself. */
export type NotDone = Exclude<Outcome<never>, { kind: 'done' }>

/** Wraps a value as done. */
export function done<Value>(value: Value): { kind: 'done'; value: Value } {
  return { kind: 'done', value }
}

/** Wraps a reason as refused. */
export function refusedBecause(because: Refusal): { kind: 'refused'; because: Refusal } {
  return { kind: 'refused', because }
}

/** Wraps one problem of one field as invalid. */
export function invalidField(path: string, message: string): { kind: 'invalid'; fields: FieldProblem[] } {
  return { kind: 'invalid', fields: [{ path, message }] }
}
