import { STORED_NAMES, TABLES } from './tables/all.ts'
import type { StoredName } from './tables/stored-facts.ts'

/** Why the database refused: which of its own rules a write would have broken. */
export type RefusalKind =
  /** Somebody else has corrected or withdrawn that version meanwhile. */
  | 'stale'
  /** A version that is to be closed is not there. */
  | 'closes-nothing'
  /** The record has a current version already. */
  | 'already-current'
  /** The same version twice in one entry. */
  | 'twin'
  /** A reference leads to no record. */
  | 'refers-to-nothing'
  /** The number of a card is another person's. */
  | 'number-of-two-people'
  /** That line of a number is another card's. */
  | 'line-of-two-cards'
  | 'editions-overlap'
  /** A card from the first day of deciding on, without a decision and not carried in. */
  | 'card-undecided'
  /** Somebody would be in two crews on one day. */
  | 'two-crews'
  | 'joined-twice'
  | 'joined-to-itself'
  | 'sign-in-name-taken'
  /** The database holds another program. */
  | 'another-program'
  /** An entry of this command is written already. */
  | 'command-repeated'
  /** A file states an instant before that of the entry before. */
  | 'stated-backwards'
  /** A fact or an entry would change what was known before. */
  | 'past-is-fixed'
  /** Any other rule of the database. */
  | 'breaks-a-check'

/** A write that the database's own rules forbid. `constraint` is the name of the rule; nothing was written. */
export class StoreRefusal extends Error {
  override readonly name = 'StoreRefusal'

  constructor(
    readonly kind: RefusalKind,
    readonly constraint: string,
    readonly section?: StoredName,
    options?: ErrorOptions,
  ) {
    super(`${kind}: ${constraint}`, options)
  }
}

const BY_NAME: Readonly<Record<string, RefusalKind>> = {
  fact_closed_once: 'stale',
  fact_unchanging: 'past-is-fixed',
  fact_recorded_before_its_entry: 'past-is-fixed',
  fact_closed_before_its_entry: 'past-is-fixed',
  fact_recorded_with_its_entry: 'past-is-fixed',
  fact_closed_with_its_entry: 'past-is-fixed',
  fact_erased_with_its_entry: 'past-is-fixed',
  program_only_one: 'another-program',
  program_fact_program_id_fkey: 'another-program',
  edition_fact_apart: 'editions-overlap',
  card_fact_decided: 'card-undecided',
  placement_fact_one_crew: 'two-crews',
  person_join_fact_once: 'joined-twice',
  person_join_fact_of_two: 'joined-to-itself',
  account_fact_sign_in_name: 'sign-in-name-taken',
  entry_command_key: 'command-repeated',
  entry_pkey: 'past-is-fixed',
  entry_prev_key: 'past-is-fixed',
  entry_prev_n_fkey: 'past-is-fixed',
  card_fact_number_person_id_fkey: 'number-of-two-people',
  // The anchor of a card whose number and line are taken is not made.
  card_fact_card_id_fkey: 'line-of-two-cards',
  card_fact_card_id_number_line_fkey: 'line-of-two-cards',
  card_number_line_key: 'line-of-two-cards',
}

const BY_ENDING: readonly (readonly [string, RefusalKind])[] = [
  ['_current', 'already-current'],
  ['_supersedes_key', 'stale'],
  ['_recorded_in_fkey', 'stale'],
  ['_fact_pkey', 'twin'],
  ['_id_fkey', 'refers-to-nothing'],
]

/** The refusal behind an error of the client library; nothing where the error is none of a constraint. */
export function refusalOf(error: unknown): StoreRefusal | undefined {
  if (error instanceof StoreRefusal) return error
  const constraint = constraintOf(error)
  if (constraint === undefined) return undefined
  const kind =
    BY_NAME[constraint] ?? BY_ENDING.find(([ending]) => constraint.endsWith(ending))?.[1] ?? 'breaks-a-check'
  const section = STORED_NAMES.find((name) => constraint.startsWith(`${TABLES[name].fact}_`))
  return new StoreRefusal(kind, constraint, section, { cause: error })
}

/** Where neither the driver nor the adapter says which constraint it was, PostgreSQL's message still quotes its name. */
const NAMED_IN_MESSAGE: readonly unknown[] = ['23514', '23P01', '23000']

/** The name of the constraint that an error is about. Errors on commit come from the adapter itself, others wrapped. */
function constraintOf(error: unknown): string | undefined {
  const adapterError = at(error, 'meta', 'driverAdapterError') ?? error
  const cause = at(adapterError, 'cause')
  const named = at(cause, 'constraint', 'index')
  if (typeof named === 'string') return named
  const message = at(cause, 'originalMessage')
  if (typeof message !== 'string' || !NAMED_IN_MESSAGE.includes(at(cause, 'originalCode'))) return undefined
  return [...message.matchAll(/"([^"]+)"/g)].at(-1)?.[1]
}

function at(value: unknown, ...path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>)[key] : undefined,
    value,
  )
}
