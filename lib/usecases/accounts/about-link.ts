import { z } from 'zod'
import { accountOf } from '../../access/actors.ts'
import { success } from '../../core/kernel/result.ts'
import { tokenDigest } from '../../platform/secrets/secrets.ts'
import { linkOf, type LinkRow } from '../../store/desk/links.ts'
import { nameOf } from '../journal/entry-words.ts'
import { query, type World } from '../door/use-case.ts'
import { givenCodeField } from './account-link.ts'

/** How a link to set a password stands: nobody made it, it was used, it is over, or it is good. */
export type LinkStanding = 'unknown' | 'used' | 'over' | 'good'

/** What whoever opens a link to set a password may know: how it stands and, where it is good, whose account it is. */
export const aboutLink = query({
  name: 'accounts/about-link',
  permission: 'anybody',
  input: z.strictObject({ code: givenCodeField }),
  load: async (world, { code }) => {
    const link = await linkOf(world.runtime.store, tokenDigest(code))
    return success({ world, standing: standingOf(link, world), link })
  },
  about: () => ({ kind: 'nothing' }),
  answer: ({ world: { snapshot }, standing, link }) => {
    const program = snapshot.founded ? snapshot.program.program.name : undefined
    if (standing !== 'good' || link?.purpose !== 'password') return { standing, program }
    const signInName = accountOf(snapshot, link.account)?.signInName
    return { standing, program, signInName, name: nameOf(snapshot, link.account) }
  },
})

/** How a link stands now; that of an account that was ended is over. */
export function standingOf(link: LinkRow | undefined, { snapshot, realNow }: World): LinkStanding {
  if (link?.purpose !== 'password') return 'unknown'
  if (link.usedAt !== undefined) return 'used'
  const isOpen = accountOf(snapshot, link.account)?.closed === false
  return link.endsAt > realNow && isOpen ? 'good' : 'over'
}
