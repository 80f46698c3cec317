import { takeAccess } from '../../store/access-log.ts'
import { snapshotOf } from '../../store/snapshot.ts'
import type { Caller } from './caller.ts'
import type { NotDone } from './outcome.ts'
import type { Runtime } from './runtime.ts'
import type { About, Look } from './use-case.ts'

/** Writes down that somebody looked: a list as one line with its count, people who are named in a line each. */
export function logLook(
  runtime: Runtime,
  useCase: string,
  caller: Caller,
  n: number,
  about: About,
  { question, count }: Look,
): void {
  const line = {
    ...base(runtime, useCase, caller),
    outcome: 'looked',
    n,
    ...(question === undefined ? {} : { question }),
  }
  const subjects = subjectsOf(about)
  if (subjects.length === 0) takeAccess(runtime.store, count === undefined ? line : { ...line, count })
  for (const subject of subjects) takeAccess(runtime.store, { ...line, subject, count: 1 })
}

/** Writes down that somebody was refused, and why. */
export async function logRefusal(
  runtime: Runtime,
  useCase: string,
  caller: Caller,
  refused: NotDone,
): Promise<void> {
  const reason = refused.kind === 'refused' ? refused.because.kind : refused.kind
  const { n } = await snapshotOf(runtime.store)
  takeAccess(runtime.store, { ...base(runtime, useCase, caller), outcome: 'refused', n, reason })
}

/** Writes down an act that changes no record; of people who are named, in a line each. */
export function logAct(
  runtime: Runtime,
  { name, logged }: { name: string; logged: string },
  caller: Caller,
  n: number,
  about: About,
): void {
  const line = { ...base(runtime, name, caller), outcome: logged, n }
  const subjects = subjectsOf(about)
  if (subjects.length === 0) takeAccess(runtime.store, line)
  for (const subject of subjects) takeAccess(runtime.store, { ...line, subject, count: 1 })
}

function subjectsOf(about: About): readonly string[] {
  return about.kind === 'people' && about.asList !== true ? [...new Set(about.people)] : []
}

function base(runtime: Runtime, useCase: string, caller: Caller) {
  return {
    at: runtime.clock.now(),
    useCase,
    ...(caller.kind === 'account' ? { account: caller.actor.account } : {}),
  }
}
