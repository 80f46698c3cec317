import { z } from 'zod'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import { nameField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { adoptBook } from '../../core/program/adopt-book.ts'
import { timeZoneField } from '../../core/program/program.schema.ts'
import { hashPassword } from '../../platform/passwords/passwords.ts'
import { newPasswordField } from '../../platform/passwords/password.schema.ts'
import { signInNameField } from '../../access/sign-in-name.schema.ts'
import { tokenDigest } from '../../platform/secrets/secrets.ts'
import { linkOf, useLink } from '../../store/desk/links.ts'
import { setPassword } from '../../store/desk/passwords.ts'
import type { NewFact } from '../../store/write.ts'
import { refusedBecause, invalidField, type NotDone } from '../door/outcome.ts'
import { command, type World } from '../door/use-case.ts'
import { hasManager } from './managers.ts'
import { withoutKnowing } from './program-facts.ts'

const input = z.strictObject({
  /** The code of the link that the start printed. */
  code: z.string().max(100),
  name: nameField,
  signInName: signInNameField,
  password: newPasswordField,
  /** Where no program was loaded from a file: what to call it, its zone, the shipped book that is in force. */
  program: z.exactOptional(
    z.strictObject({ name: nameField, timeZone: timeZoneField, book: z.string().max(64) }),
  ),
})
type Input = z.infer<typeof input>

const PROGRAM_ID = 'program'
const FIRST_ACCOUNT = 'first-manager'
const FIRST_PERSON = 'p-first-manager'

type Founding = { record: readonly NewFact[]; founded: boolean; passwordHash: string; code: string }

/**
 * The first program manager begins: gives a name and a password, and, where nothing was loaded, the time zone and a
 * shipped book. The book is adopted by this one person, which the journal says for ever; later ones need two.
 */
export const foundProgram = command({
  name: 'program/found',
  permission: 'anybody',
  input,
  prepare: async ({ password, code }, { store }) => {
    const link = await linkOf(store, tokenDigest(code), 'founding')
    // Hashing is slow: it is not spent on those without a link.
    if (link === undefined) return refusal(refusedBecause({ kind: 'link-not-good' }))
    return success({ passwordHash: await hashPassword(password), endsAt: link.endsAt, used: link.usedAt })
  },
  load: (world, { passwordHash, endsAt, used }) =>
    used !== undefined || endsAt < world.realNow
      ? refusal(refusedBecause({ kind: 'link-not-good' }))
      : success({ world, passwordHash }),
  about: () => ({ kind: 'nothing' }),
  decide: ({ world, passwordHash }, typed): Result<Founding, NotDone> => {
    if (hasManager(world)) return refusal(refusedBecause({ kind: 'already-founded' }))
    const program = world.snapshot.founded ? success([]) : programFacts(world, typed)
    if (!program.ok) return program
    return success({
      record: [...program.value, ...managerFacts(typed, world.today)],
      founded: !world.snapshot.founded,
      passwordHash,
      code: typed.code,
    })
  },
  save: ({ record }) => [{ changes: { record, withdraw: [] } }],
  journal: ({ founded }) => [{ event: founded ? 'program-founded' : 'manager-opened', said: null }],
  desk: async ({ passwordHash, code }, desk, { realNow }) => {
    await setPassword(desk, { account: FIRST_ACCOUNT, hash: passwordHash, changedAt: realNow })
    await useLink(desk, tokenDigest(code), realNow)
  },
  value: () => ({ begun: true }),
})

function programFacts(world: World, { program }: Input): Result<NewFact[], NotDone> {
  if (program === undefined)
    return refusal(invalidField('program', 'Give the program a name and a time zone.'))
  const file = world.runtime.shippedBooks.find(({ book }) => book.id === program.book)
  if (file === undefined) return refusal(refusedBecause({ kind: 'book-unknown', book: program.book }))
  const adopted = adoptBook(file, world.snapshot.n + 1)
  const sections = ['books', 'editions', 'extensions', 'cautions'] as const
  return success([
    { section: 'program', fact: { ...program, id: PROGRAM_ID, invented: false } },
    ...sections.flatMap((section) =>
      adopted[section].map((fact): NewFact => ({ section, fact: withoutKnowing(fact) })),
    ),
  ])
}

function managerFacts({ name, signInName }: Input, today: CalendarDate): NewFact[] {
  return [
    { section: 'people', fact: { id: FIRST_PERSON, name } },
    {
      section: 'accounts',
      fact: { id: FIRST_ACCOUNT, signInName, person: FIRST_PERSON, founding: true, closed: false },
    },
    {
      section: 'accountRoles',
      fact: {
        id: 'first-manager-role',
        account: FIRST_ACCOUNT,
        role: 'program-manager',
        firstDay: today,
        by: 'the start, at founding',
      },
    },
  ]
}
