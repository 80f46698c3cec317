import type { Result } from '../core/kernel/result.ts'

/** The exit code where the input (a file, or a name in it) was refused. */
export const INPUT_REFUSED = 1
/** The exit code where the command line itself was not understood. */
const MISUSE = 2

/** Why a command gave no answer: the exit code and the lines for the error stream. */
export type Refusal = { exit: typeof INPUT_REFUSED | typeof MISUSE; lines: readonly string[] }

/** What a command gives: the text for the output stream, whole, or a refusal; never half of both. */
export type Outcome = Result<string, Refusal>

/** A refusal of the input. */
export function refused(...lines: string[]): { ok: false; problem: Refusal } {
  return { ok: false, problem: { exit: INPUT_REFUSED, lines } }
}

/** A refusal of the command line. */
export function misuse(...lines: string[]): { ok: false; problem: Refusal } {
  return { ok: false, problem: { exit: MISUSE, lines } }
}
