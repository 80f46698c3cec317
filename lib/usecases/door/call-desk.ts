import { snapshotOf } from '../../store/snapshot.ts'
import { logAct, logRefusal } from './access-log.ts'
import { admitAbout, admitCaller } from './admit.ts'
import { actorOf, type Caller } from './caller.ts'
import type { Outcome } from './outcome.ts'
import { readInput } from './read-input.ts'
import type { Runtime } from './runtime.ts'
import type { DeskCommand } from './use-case.ts'
import { worldOf } from './world.ts'

/** The way in for writes on which no answer rests: signing in and out, links. */
export async function callDeskCommand<Input, Prepared, Facts, Value>(
  runtime: Runtime,
  useCase: DeskCommand<Input, Prepared, Facts, Value>,
  { input }: { input: unknown },
  caller: Caller,
): Promise<Outcome<Value>> {
  const ended = await runDeskCommand(runtime, useCase, input, caller)
  if (ended.kind !== 'done' && ended.kind !== 'invalid')
    await logRefusal(runtime, useCase.name, caller, ended)
  return ended
}

async function runDeskCommand<Input, Prepared, Facts, Value>(
  runtime: Runtime,
  useCase: DeskCommand<Input, Prepared, Facts, Value>,
  input: unknown,
  caller: Caller,
): Promise<Outcome<Value>> {
  const refused = admitCaller(caller, useCase.permission, useCase.stepUp ?? false)
  if (refused !== undefined) return refused
  const read = readInput(useCase.input, input)
  if (!read.ok) return { kind: 'invalid', fields: read.problem }
  const prepared = await useCase.prepare(read.value, runtime)
  if (!prepared.ok) return prepared.problem
  const world = worldOf(runtime, await snapshotOf(runtime.store))
  const loaded = await useCase.load(world, prepared.value, read.value, actorOf(caller))
  if (!loaded.ok) return loaded.problem
  const about = useCase.about(loaded.value, read.value)
  const outOfReach = admitAbout(caller, useCase.permission, about, world)
  if (outOfReach !== undefined) return outOfReach
  const ended = await useCase.act(world, loaded.value, read.value, caller)
  if (ended.kind === 'done') logAct(runtime, useCase, caller, world.snapshot.n, about)
  return ended
}
