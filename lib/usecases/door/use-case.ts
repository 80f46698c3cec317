import type { z } from 'zod'
import type { Belongs } from '../../access/reach.ts'
import type { Actor } from '../../access/roles.ts'
import type { Permission } from '../../access/table.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { Instant } from '../../core/calendar/instants.ts'
import { success, type Result } from '../../core/kernel/result.ts'
import type { Version } from '../../core/kernel/versions.schema.ts'
import type { JsonValue } from '../../core/kernel/canonical-json.ts'
import type { Snapshot } from '../../store/snapshot.ts'
import type { Changes } from '../../store/write.ts'
import type { Database } from '../../store/client.ts'
import type { EventKind, LoggedKind } from '../../wording/events.ts'
import type { Caller } from './caller.ts'
import type { NotDone, Outcome } from './outcome.ts'
import type { Runtime } from './runtime.ts'

/** Everything a use case may know beside its input: the facts, the day, who acts. */
export type World = {
  snapshot: Snapshot
  /** The day in the program's time zone. */
  today: CalendarDate
  now: Instant
  /** The clock of this machine, for sessions and links, which a demo's own clock does not move. */
  realNow: Date
  runtime: Runtime
}

/** Who may call: a permission of the table, or one of two that need no account. */
export type Admission = Permission | 'anybody' | 'start-only'

/**
 * The records a use case is about; access is checked on them after they were loaded, an entry quotes them, and the
 * access log names them, each person in a line of their own. People looked at as a list are one line together.
 */
export type About =
  | { kind: 'nothing' }
  | { kind: 'program' }
  | { kind: 'own-account' }
  /** Accounts by the ids of their records; they belong to the program. */
  | { kind: 'accounts'; accounts: readonly string[] }
  | { kind: 'people'; people: readonly string[]; asList?: true }
  /**
   * What is entered or corrected. People on record must be within reach; so must what is named beside them, because
   * somebody new has no membership yet, and nobody is moved, nor work put, where the caller's role does not reach.
   */
  | {
      kind: 'records'
      people: readonly string[]
      /** Quoted with the people: those whom the entry itself puts on record. */
      added?: readonly string[]
      memberships?: readonly Belongs[]
      places?: readonly string[]
    }

/** How a look stands in the access log beside whom it was about: what was asked, and how many records were shown. */
export type Look = { question?: JsonValue; count?: number }

/**
 * The version that the caller had before them, by the entry that recorded it, and the version that is current. Where
 * they differ, somebody else was first.
 */
export type Seen = { version: number; current: Version | undefined }

type Common<Input, Prepared> = {
  /** Room and verb, `program/bring-in`. */
  name: string
  permission: Admission
  /** Whether the password is wanted again when it was last given more than five minutes ago. */
  stepUp?: true
  input: z.ZodType<Input>
  /**
   * Fields that the digest of a command leaves out: it is kept plain, and a password could be guessed from it. What is
   * sent beside them then says whether a repeat is the same.
   */
  secret?: readonly string[]
  /** Slow work that needs no facts, done before anything is locked: hashing, parsing a file. */
  prepare: (input: Input, runtime: Runtime) => Promise<Result<Prepared, NotDone>>
}

/** One entry to write: what is recorded, and for an entry of a file when that was stated. */
export type EntrySaved = { changes: Changes; statedAt?: Instant }
export type EntryJournalled = { event: EventKind; said: JsonValue }

/** A write that is journalled. In this order TypeScript infers each type from the one before. */
export type Command<Input, Prepared, Facts, Decision, Value extends JsonValue> = Common<Input, Prepared> & {
  kind: 'command'
  load: (
    world: World,
    prepared: Prepared,
    input: Input,
    actor: Actor | undefined,
  ) => Result<Facts, NotDone> | Promise<Result<Facts, NotDone>>
  about: (facts: Facts, input: Input) => About
  /** Wanted where the input names a version; the door answers `stale` where it is current no more. */
  seen?: (facts: Facts, input: Input) => Seen | undefined
  decide: (facts: Facts, input: Input, world: World, actor: Actor | undefined) => Result<Decision, NotDone>
  /** The entries, one after another in one transaction; none at all where nothing changes. */
  save: (decision: Decision) => readonly EntrySaved[]
  /** What one of these entries says was done. */
  journal: (decision: Decision, saved: EntrySaved) => EntryJournalled
  /** The id of the account whose act it is where nobody is signed in: a link may say who holds it. */
  actedBy?: (decision: Decision) => string
  /** What stands beside the facts and changes with it, in the same transaction: working tables, kept answers. */
  desk?: (decision: Decision, desk: Database, world: World) => Promise<void>
  value: (decision: Decision) => Value
}

/** A write to working tables alone, on which no answer rests: a line in the access log instead of the journal. */
export type DeskCommand<Input, Prepared, Facts, Value> = Common<Input, Prepared> & {
  kind: 'desk'
  logged: LoggedKind
  load: (
    world: World,
    prepared: Prepared,
    input: Input,
    actor: Actor | undefined,
  ) => Result<Facts, NotDone> | Promise<Result<Facts, NotDone>>
  about: (facts: Facts, input: Input) => About
  act: (world: World, facts: Facts, input: Input, caller: Caller) => Promise<Outcome<Value>>
}

/** A read. */
export type Query<Input, Facts, Value> = Omit<Common<Input, undefined>, 'prepare'> & {
  kind: 'query'
  /** From the snapshot at once; what only the database holds (the desk, bodies of entries) takes its time. */
  load: (
    world: World,
    input: Input,
    actor: Actor | undefined,
  ) => Result<Facts, NotDone> | Promise<Result<Facts, NotDone>>
  about: (facts: Facts, input: Input) => About
  answer: (facts: Facts, world: World, actor: Actor | undefined) => Value
  /** How the look stands in the access log; nothing for what is nobody's record. */
  looked?: (value: Value, input: Input) => Look
}

/** What every use case declares, whatever it reads and writes. */
export type UseCaseFace = {
  kind: 'command' | 'desk' | 'query'
  name: string
  permission: Admission
  stepUp?: true
  input: z.ZodType
}

/** Declares a journalled write. */
export function command<Input, Prepared, Facts, Decision, Value extends JsonValue>(
  declared: Omit<Command<Input, Prepared, Facts, Decision, Value>, 'kind'>,
): Command<Input, Prepared, Facts, Decision, Value> {
  return { kind: 'command', ...declared }
}

/** Declares a write to working tables. */
export function deskCommand<Input, Prepared, Facts, Value>(
  declared: Omit<DeskCommand<Input, Prepared, Facts, Value>, 'kind'>,
): DeskCommand<Input, Prepared, Facts, Value> {
  return { kind: 'desk', ...declared }
}

/** Declares a read. */
export function query<Input, Facts, Value>(
  declared: Omit<Query<Input, Facts, Value>, 'kind'>,
): Query<Input, Facts, Value> {
  return { kind: 'query', ...declared }
}

/** For use cases without slow work. */
export function nothingToPrepare(): Promise<Result<undefined, NotDone>> {
  return Promise.resolve(success(undefined))
}

/** For desk commands that go by what was prepared alone. */
export function nothingToLoad<Prepared>(_world: World, prepared: Prepared): Result<Prepared, NotDone> {
  return success(prepared)
}
