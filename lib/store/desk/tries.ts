import { RateLimiterPrisma, RateLimiterRes } from 'rate-limiter-flexible'
import type { Database, Store } from '../client.ts'

const MOST_TRIES = 10
const IN_SECONDS = 15 * 60
const PREFIX = 'sign-in'

const limiters = new WeakMap<Store, RateLimiterPrisma>()

/**
 * Counts a try to sign in under a name. Nothing where it may go on; the minutes to wait where there were ten in the
 * last quarter of an hour, whoever made them and whether or not the name exists.
 */
export async function countTry(store: Store, name: string): Promise<number | undefined> {
  try {
    await limiterOf(store).consume(name)
    return undefined
  } catch (limit) {
    if (limit instanceof RateLimiterRes) return Math.max(1, Math.ceil(limit.msBeforeNext / 60_000))
    throw limit
  }
}

/** Starts the count of a name again. */
export async function forgetTries(store: Store, name: string): Promise<void> {
  await forgetTriesIn(store.prisma, name)
}

/** The same inside the transaction of a command. */
export async function forgetTriesIn(desk: Database, name: string): Promise<void> {
  await desk.tries.deleteMany({ where: { key: `${PREFIX}:${name}` } })
}

function limiterOf(store: Store): RateLimiterPrisma {
  const known = limiters.get(store)
  if (known !== undefined) return known
  const limiter = new RateLimiterPrisma({
    storeClient: store.prisma,
    tableName: 'tries',
    keyPrefix: PREFIX,
    points: MOST_TRIES,
    duration: IN_SECONDS,
  })
  limiters.set(store, limiter)
  return limiter
}
