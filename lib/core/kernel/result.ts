/** An expected outcome as a value: refusals are returned, only broken invariants are thrown. */
export type Result<Value, Problem> = { ok: true; value: Value } | { ok: false; problem: Problem }

/** Wraps a value as a success. */
export function success<Value>(value: Value): { ok: true; value: Value } {
  return { ok: true, value }
}

/** Wraps a problem as a refusal. */
export function refusal<Problem>(problem: Problem): { ok: false; problem: Problem } {
  return { ok: false, problem }
}

/** A broken invariant: a fault of the program, never of the input. */
export class InvariantBroken extends Error {
  override readonly name = 'InvariantBroken'
}
