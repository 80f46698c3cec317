import { logLook, logRefusal } from './access-log.ts'
import { admitAbout, admitCaller } from './admit.ts'
import { actorOf, type Caller } from './caller.ts'
import { done, type Outcome } from './outcome.ts'
import { readInput } from './read-input.ts'
import type { Runtime } from './runtime.ts'
import type { Query } from './use-case.ts'
import { worldOf } from './world.ts'
import { snapshotOf } from '../../store/snapshot.ts'

/** The one way in for a read: permission, input, load, a second look at what was loaded, and a line in the access log. */
export async function callQuery<Input, Facts, Value>(
  runtime: Runtime,
  useCase: Query<Input, Facts, Value>,
  { input }: { input: unknown },
  caller: Caller,
): Promise<Outcome<Value>> {
  const ended = await runQuery(runtime, useCase, input, caller)
  if (ended.kind !== 'done' && ended.kind !== 'invalid')
    await logRefusal(runtime, useCase.name, caller, ended)
  return ended
}

async function runQuery<Input, Facts, Value>(
  runtime: Runtime,
  useCase: Query<Input, Facts, Value>,
  input: unknown,
  caller: Caller,
): Promise<Outcome<Value>> {
  const refused = admitCaller(caller, useCase.permission, useCase.stepUp ?? false)
  if (refused !== undefined) return refused
  const read = readInput(useCase.input, input)
  if (!read.ok) return { kind: 'invalid', fields: read.problem }
  const world = worldOf(runtime, await snapshotOf(runtime.store))
  const loaded = await useCase.load(world, read.value, actorOf(caller))
  if (!loaded.ok) return loaded.problem
  const about = useCase.about(loaded.value, read.value)
  const outOfReach = admitAbout(caller, useCase.permission, about, world)
  if (outOfReach !== undefined) return outOfReach
  const value = useCase.answer(loaded.value, world, actorOf(caller))
  if (useCase.looked !== undefined) {
    logLook(runtime, useCase.name, caller, world.snapshot.n, about, useCase.looked(value, read.value))
  }
  return done(value)
}
