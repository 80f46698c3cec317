import { z } from 'zod'
import { dateIn } from '../../core/calendar/instants.ts'
import { nameField } from '../../core/kernel/fields.schema.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { isKnownAt } from '../../core/kernel/versions.ts'
import { adoptBook } from '../../core/program/adopt-book.ts'
import { timeZoneField } from '../../core/program/program.schema.ts'
import { hashPassword } from '../../platform/passwords/passwords.ts'
import { newPasswordField, WEAK } from '../../platform/passwords/password.schema.ts'
import { weaknessOf } from '../../platform/passwords/weakness.ts'
import { signInNameField } from '../../access/sign-in-name.schema.ts'
import { tokenDigest } from '../../platform/secrets/secrets.ts'
import { linkOf, useLink } from '../../store/desk/links.ts'
import { setPassword } from '../../store/desk/passwords.ts'
import type { NewFact } from '../../store/write.ts'
import { refusedBecause, invalidField, type NotDone } from '../door/outcome.ts'
import { command, type World } from '../door/use-case.ts'
import { freeId } from '../door/free-id.ts'
import { hasManager } from './managers.ts'
import { bookFacts } from './program-facts.ts'

const typed = z.strictObject({
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

const input = typed.superRefine(({ password, signInName, name, program }, context) => {
  if (weaknessOf(password, [signInName, name, program?.name ?? '']) !== 'own-words') return
  context.addIssue({ code: 'custom', path: ['password'], message: WEAK['own-words'] })
})
type Input = z.infer<typeof input>

const PROGRAM_ID = 'program'

/** The ids that a manager begins under, none of which stands in the records yet. */
type ManagerIds = { person: string; account: string; role: string }

type Founding = {
  record: readonly NewFact[]
  account: string
  founded: boolean
  passwordHash: string
  code: string
}

/**
 * The first program manager begins: gives a name and a password, and, where nothing was loaded, the time zone and a
 * shipped book. The book is adopted by this one person, which the journal says for ever; later ones need two.
 */
export const foundProgram = command({
  name: 'program/found',
  permission: 'anybody',
  input,
  prepare: async ({ password, code }, { store }) => {
    const link = await linkOf(store, tokenDigest(code))
    // Hashing is slow: it is not spent on those without a link.
    if (link?.purpose !== 'founding') return refusal(refusedBecause({ kind: 'link-not-good' }))
    return success({ passwordHash: await hashPassword(password), endsAt: link.endsAt, used: link.usedAt })
  },
  load: (world, { passwordHash, endsAt, used }) =>
    used !== undefined || endsAt < world.realNow
      ? refusal(refusedBecause({ kind: 'link-not-good' }))
      : success({ world, passwordHash }),
  about: () => ({ kind: 'nothing' }),
  decide: ({ world, passwordHash }, typed): Result<Founding, NotDone> => {
    if (hasManager(world)) return refusal(refusedBecause({ kind: 'already-founded' }))
    if (isSignInNameTaken(world, typed.signInName)) {
      return refusal(refusedBecause({ kind: 'sign-in-name-taken', name: typed.signInName }))
    }
    const program = world.snapshot.founded ? success([]) : programFacts(world, typed)
    if (!program.ok) return program
    const ids = managerIds(world)
    return success({
      record: [...program.value, ...managerFacts(world, typed, ids)],
      account: ids.account,
      founded: !world.snapshot.founded,
      passwordHash,
      code: typed.code,
    })
  },
  save: ({ record }) => [{ changes: { record, withdraw: [] } }],
  journal: ({ founded }) => ({ event: founded ? 'program-founded' : 'manager-opened', said: null }),
  desk: async ({ account, passwordHash, code }, desk, { realNow }) => {
    await setPassword(desk, { account, hash: passwordHash, changedAt: realNow })
    await useLink(desk, tokenDigest(code), realNow)
  },
  value: () => ({ begun: true }),
})

function programFacts(world: World, { program }: Input): Result<NewFact[], NotDone> {
  if (program === undefined)
    return refusal(invalidField('program', 'Give the program a name and a time zone.'))
  const file = world.runtime.shippedBooks.find(({ book }) => book.id === program.book)
  if (file === undefined) return refusal(refusedBecause({ kind: 'book-unknown', book: program.book }))
  return success([
    { section: 'program', fact: { ...program, id: PROGRAM_ID, invented: false } },
    ...bookFacts(adoptBook(file, world.snapshot.n + 1)),
  ])
}

function managerFacts(world: World, { name, signInName, program }: Input, ids: ManagerIds): NewFact[] {
  return [
    { section: 'people', fact: { id: ids.person, name } },
    {
      section: 'accounts',
      fact: { id: ids.account, signInName, person: ids.person, founding: true, closed: false },
    },
    {
      section: 'accountRoles',
      fact: {
        id: ids.role,
        account: ids.account,
        role: 'program-manager',
        // The day in the zone that this very command sets: a role that began by another would not be in force yet.
        firstDay:
          world.snapshot.founded || program === undefined ? world.today : dateIn(world.now, program.timeZone),
        by: 'the start, at founding',
      },
    },
  ]
}

/** The name of a closed account stays taken too: the database keeps each once. */
function isSignInNameTaken({ snapshot }: World, signInName: string): boolean {
  return snapshot.accounts.some((one) => one.signInName === signInName && isKnownAt(one, snapshot.n))
}

/** Where the managers before have left their ids stay theirs, and a file may have used any. */
function managerIds({ snapshot: { accounts, roles, program } }: World): ManagerIds {
  return {
    person: freeId('p-first-manager', program.people),
    account: freeId('first-manager', accounts),
    role: freeId('first-manager-role', roles),
  }
}
