import { hash, verify } from '@node-rs/argon2'

/**
 * The package hashes by Argon2id unless told otherwise; the parameters are those of OWASP's password storage page:
 * 19 MiB, two passes, one lane.
 */
const OPTIONS = { memoryCost: 19_456, timeCost: 2, parallelism: 1 }

/** Two hashes at once: each takes memory, and a flood of sign-ins must not take it all. */
const MOST_AT_ONCE = 2
let running = 0
const waiting: (() => void)[] = []

/** The hash of a password. */
export function hashPassword(password: string): Promise<string> {
  return inTurn(() => hash(password.normalize('NFC'), OPTIONS))
}

/**
 * Whether a password is that of a hash. Without a hash the work is the same and the answer no, so that nobody learns
 * from the time whether an account exists.
 */
export async function passwordIsRight(password: string, kept: string | undefined): Promise<boolean> {
  const against = kept ?? (await nobodysHash())
  const right = await inTurn(() => verify(against, password.normalize('NFC')))
  return right && kept !== undefined
}

let nobodys: Promise<string> | undefined
function nobodysHash(): Promise<string> {
  nobodys ??= hash('nobody signs in with this', OPTIONS)
  return nobodys
}

async function inTurn<Value>(work: () => Promise<Value>): Promise<Value> {
  if (running >= MOST_AT_ONCE) await new Promise<void>((resolve) => waiting.push(resolve))
  else running += 1
  try {
    return await work()
  } finally {
    // The place goes straight to the next in line, so that nobody slips in between.
    const next = waiting.shift()
    if (next === undefined) running -= 1
    else next()
  }
}
