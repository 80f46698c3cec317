import { z } from 'zod'
import { tokenDigest } from '../../platform/secrets/secrets.ts'
import type { Database } from '../../store/client.ts'
import { makeLinkIn } from '../../store/desk/links.ts'

/** A link to set a password is good for so many days: whoever is out on a hitch comes back within them. */
export const LINK_GOOD_FOR_DAYS = 7

const DAY = 24 * 3_600_000

/**
 * The code of a link that is to be made. The page that asks for it draws it, so that a repeat of the same form shows
 * the same link; it never stands in the journal, which is where the outcome of a command is kept.
 */
export const newCodeField = z.string().regex(/^[\w-]{43}$/, 'this page is not whole any more; open it again')

/** A code that somebody brings; whether it is a link's is found by its digest. */
export const givenCodeField = z.string().max(100, 'this is no link of Kerfbook’s')

/** Until when a link that is made now is good. */
export function linkEnds(realNow: Date): Date {
  return new Date(realNow.getTime() + LINK_GOOD_FOR_DAYS * DAY)
}

/** Makes the link to set the password of an account, in the transaction of a command; only its digest is kept. */
export async function makeAccountLink(
  desk: Database,
  { account, code }: { account: string; code: string },
  realNow: Date,
): Promise<void> {
  await makeLinkIn(desk, {
    purpose: 'password',
    account,
    digest: tokenDigest(code),
    madeAt: realNow,
    endsAt: linkEnds(realNow),
  })
}
