import { canonicalJson, type JsonValue } from '../../core/kernel/canonical-json.ts'
import { isClockBehind } from '../../platform/clock/clock.ts'
import { sha256 } from '../../platform/secrets/sha256.ts'
import { refusalOf } from '../../store/refusals.ts'
import { underLock, type Writing } from '../../store/write.ts'
import { logRefusal } from './access-log.ts'
import { admitAbout, admitCaller } from './admit.ts'
import { actorOf, type Caller } from './caller.ts'
import { done, invalidField, refusedBecause, type Outcome } from './outcome.ts'
import { readInput } from './read-input.ts'
import type { Runtime } from './runtime.ts'
import type { About, Command } from './use-case.ts'
import { worldOf } from './world.ts'

/** What a client sends with a command: its input, and an id that the client made, the same at each repeat. */
export type CommandCall = { input: unknown; command: string }

const COMMAND_ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/

/**
 * The one way in for a write: permission, input, slow work, then one transaction under the writers' lock in which
 * everything is loaded, looked at again, decided, saved and journalled. A repeat of a command gets its stored outcome.
 */
export async function callCommand<Input, Prepared, Facts, Decision, Value extends JsonValue>(
  runtime: Runtime,
  useCase: Command<Input, Prepared, Facts, Decision, Value>,
  call: CommandCall,
  caller: Caller,
): Promise<Outcome<Value>> {
  const ended = await runCommand(runtime, useCase, call, caller)
  if (ended.kind !== 'done' && ended.kind !== 'invalid')
    await logRefusal(runtime, useCase.name, caller, ended)
  return ended
}

async function runCommand<Input, Prepared, Facts, Decision, Value extends JsonValue>(
  runtime: Runtime,
  useCase: Command<Input, Prepared, Facts, Decision, Value>,
  { input, command }: CommandCall,
  caller: Caller,
): Promise<Outcome<Value>> {
  const refused = admitCaller(caller, useCase.permission, useCase.stepUp ?? false)
  if (refused !== undefined) return refused
  const read = readInput(useCase.input, input)
  if (!read.ok) return { kind: 'invalid', fields: read.problem }
  if (!COMMAND_ID.test(command))
    return invalidField('command', 'A command carries an id that its client made.')
  const digest = digestOf(useCase.name, withoutSecrets(input, useCase.secret ?? []), caller)
  const prepared = await useCase.prepare(read.value, runtime)
  if (!prepared.ok) return prepared.problem
  try {
    return await underLock(runtime.store, runtime.clock.now, async (writing) => {
      const repeated = await outcomeOfRepeat<Value>(writing, command, digest)
      if (repeated !== undefined) return repeated
      const world = worldOf(runtime, writing.snapshot)
      const actor = actorOf(caller)
      const loaded = await useCase.load(world, prepared.value, read.value, actor)
      if (!loaded.ok) return loaded.problem
      const about = useCase.about(loaded.value, read.value)
      const outOfReach = admitAbout(caller, useCase.permission, about, world)
      if (outOfReach !== undefined) return outOfReach
      const { lastAt } = writing
      if (lastAt !== undefined && isClockBehind(runtime.clock.now(), lastAt))
        return refusedBecause({ kind: 'clock-behind', now: world.now, last: lastAt })
      const seen = useCase.seen?.(loaded.value, read.value)
      if (seen !== undefined && seen.current?.recordedIn !== seen.version) return { kind: 'stale' }
      const decided = useCase.decide(loaded.value, read.value, world, actor)
      if (!decided.ok) return decided.problem
      const value = useCase.value(decided.value)
      const entries = useCase.save(decided.value)
      const actedBy = actor?.account ?? useCase.actedBy?.(decided.value)
      for (const saved of entries) {
        const { changes, statedAt } = saved
        const isLast = saved === entries.at(-1)
        await writing.writeEntry(
          {
            ...useCase.journal(decided.value, saved),
            v: 1,
            ...aboutOf(about),
            outcome: isLast ? value : null,
            ...(isLast ? { command, commandDigest: digest } : {}),
            ...(actedBy === undefined ? {} : { actor: actedBy }),
            ...(statedAt === undefined ? {} : { statedAt }),
          },
          changes,
        )
      }
      // After the entries: what stands on the desk may name what they recorded.
      await useCase.desk?.(decided.value, writing.tx, world)
      return done(value)
    })
  } catch (error) {
    const constraint = refusalOf(error)
    if (constraint === undefined) throw error
    return constraint.kind === 'stale'
      ? { kind: 'stale' }
      : refusedBecause({ kind: 'constraint', rule: constraint.kind, name: constraint.constraint })
  }
}

/** Whom an entry quotes as those it is about. */
function aboutOf(about: About): { about: readonly string[]; accounts?: readonly string[] } {
  if (about.kind === 'accounts') return { about: [], accounts: about.accounts }
  if (about.kind === 'records') return { about: [...about.people, ...(about.added ?? [])] }
  return { about: about.kind === 'people' ? about.people : [] }
}

/** A repeat of a command gets what it got the first time; another body under its id is refused. */
async function outcomeOfRepeat<Value extends JsonValue>(
  writing: Writing,
  command: string,
  digest: Buffer,
): Promise<Outcome<Value> | undefined> {
  const stored = await writing.outcomeOf(command)
  if (stored === undefined) return undefined
  // INVARIANT: the digest binds the use case, so the stored outcome is of its type.
  return digest.equals(stored.digest)
    ? done(stored.outcome as Value)
    : refusedBecause({ kind: 'command-used-otherwise' })
}

function withoutSecrets(input: unknown, secret: readonly string[]): unknown {
  if (secret.length === 0 || typeof input !== 'object' || input === null) return input
  return Object.fromEntries(Object.entries(input).filter(([name]) => !secret.includes(name)))
}

/** The digest binds the use case, everything that was sent and who sent it. */
function digestOf(name: string, input: unknown, caller: Caller): Buffer {
  const by = caller.kind === 'account' ? caller.actor.account : caller.kind
  return Buffer.from(sha256(canonicalJson({ name, by, input: plainJson(input) })), 'hex')
}

function plainJson(input: unknown): JsonValue {
  return input === undefined ? null : (JSON.parse(JSON.stringify(input)) as JsonValue)
}
