import { z } from 'zod'
import { newToken, tokenDigest } from '../../platform/secrets/secrets.ts'
import { makeLink } from '../../store/desk/links.ts'
import { done, refusedBecause } from '../door/outcome.ts'
import { deskCommand, nothingToLoad, nothingToPrepare } from '../door/use-case.ts'
import { hasManager } from './managers.ts'

/** A link to begin with is good for a day; a new start prints a new one. */
const GOOD_FOR_HOURS = 24

/** Makes the link to the page on which the first program manager begins; the start prints it. */
export const makeFoundingLink = deskCommand({
  name: 'program/founding-link',
  permission: 'start-only',
  input: z.strictObject({}),
  prepare: nothingToPrepare,
  logged: 'founding-link-made',
  load: nothingToLoad,
  about: () => ({ kind: 'nothing' }),
  act: async (world) => {
    if (hasManager(world)) return refusedBecause({ kind: 'already-founded' })
    const code = newToken()
    const endsAt = new Date(world.realNow.getTime() + GOOD_FOR_HOURS * 3_600_000)
    await makeLink(world.runtime.store, {
      digest: tokenDigest(code),
      purpose: 'founding',
      madeAt: world.realNow,
      endsAt,
    })
    return done({ code, endsAt: endsAt.toISOString() })
  },
})
