import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { callCommand } from '../../usecases/door/call-command.ts'
import { callDeskCommand } from '../../usecases/door/call-desk.ts'
import type { Outcome } from '../../usecases/door/outcome.ts'
import type { Runtime } from '../../usecases/door/runtime.ts'
import { openDemoAccounts } from '../../usecases/accounts/demo-accounts.ts'
import { readDemoAccounts } from '../../usecases/accounts/demo-accounts-file.ts'
import { bringInProgram } from '../../usecases/program/bring-in.ts'
import { makeFoundingLink } from '../../usecases/program/founding-link.ts'
import { snapshotOf } from '../../store/snapshot.ts'
import { refusalSentence } from '../../wording/refusals.ts'
import type { JsonValue } from '../../core/kernel/canonical-json.ts'
import type { Command } from '../../usecases/door/use-case.ts'

/** Why a beginning was not made, as lines to print. */
export class BeginningRefused extends Error {
  override readonly name = 'BeginningRefused'
  constructor(readonly lines: readonly string[]) {
    super(lines.join('\n'))
  }
}

/** Loads the invented demonstration and opens its accounts, each where that has not been done. */
export async function beginDemo(runtime: Runtime, seeds: string, say: (line: string) => void): Promise<void> {
  if ((await snapshotOf(runtime.store)).n === 0) {
    say('Loading the invented demonstration …')
    await give(runtime, bringInProgram, { text: readFileSync(join(seeds, 'demo.json'), 'utf8') })
  }
  if ((await snapshotOf(runtime.store)).accounts.length > 0) return
  await give(runtime, openDemoAccounts, readDemoAccounts(seeds))
}

/** Loads a program file with its history. */
export async function beginFrom(runtime: Runtime, text: string): Promise<{ entries: number }> {
  const { entries } = await give(runtime, bringInProgram, { text })
  return { entries }
}

/** The code of a link to begin with, where nobody manages the program yet. */
export async function beginningCode(runtime: Runtime): Promise<string | undefined> {
  const made = await callDeskCommand(runtime, makeFoundingLink, { input: {} }, { kind: 'start' })
  return made.kind === 'done' ? made.value.code : undefined
}

async function give<Input, Prepared, Facts, Decision, Value extends JsonValue>(
  runtime: Runtime,
  useCase: Command<Input, Prepared, Facts, Decision, Value>,
  input: unknown,
): Promise<Value> {
  const outcome = await callCommand(runtime, useCase, { input, command: randomUUID() }, { kind: 'start' })
  if (outcome.kind === 'done') return outcome.value
  throw new BeginningRefused(linesOf(outcome))
}

function linesOf(outcome: Exclude<Outcome<never>, { kind: 'done' }>): string[] {
  switch (outcome.kind) {
    case 'invalid':
      return outcome.fields.map(({ message }) => message)
    case 'refused':
      return [refusalSentence(outcome.because)]
    case 'stale':
    case 'not-found':
    case 'sign-in-wanted':
    case 'password-wanted':
    case 'forbidden':
      return [`The start was refused its own command (${outcome.kind}).`]
  }
}
