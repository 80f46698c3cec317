import { randomInt, randomUUID } from 'node:crypto'
import { success } from '../../core/kernel/result.ts'
import type { DatabaseCommand } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { misuse, type Outcome } from '../outcome.ts'
import { printableLine, printableText } from '../printable.ts'
import { refusedByDoor, withRuntime } from '../with-runtime.ts'

/** Letters and digits that nobody mistakes for each other when they are read aloud. */
const SIGNS = 'abcdefghjkmnpqrstuvwxyz23456789'
const GROUPS = 5
const GROUP_LENGTH = 4

/** A way in for a program manager who is locked out, from the machine of the database alone. */
export const resetManagerCommand: DatabaseCommand = {
  name: 'reset-manager',
  summary: 'a new password for a program manager who is locked out',
  usage: ['reset-manager NAME'],
  about: [
    'NAME is what the manager signs in as. A new password is made and shown once, every session of the account ends, and the journal says for ever that it was done.',
    'Whoever may run this on the machine of the database could change the database without it, too; that is why it asks for no password.',
  ],
  options: {},
  examples: [`${PROGRAM} reset-manager ada`],
  run: async ({ operands }) => {
    const [name, ...more] = operands
    if (name === undefined) return misuse('NAME is missing: what the manager signs in as.')
    if (more.length > 0) return misuse(`One NAME is wanted, and there are ${operands.length}.`)
    return reset(name)
  },
}

async function reset(signInName: string): Promise<Outcome> {
  const { callCommand } = await import('../../usecases/door/call-command.ts')
  const { resetManager } = await import('../../usecases/accounts/reset-manager.ts')
  return withRuntime(async (runtime) => {
    const password = newPassword()
    const call = { input: { signInName, password }, command: randomUUID() }
    const ended = await callCommand(runtime, resetManager, call, { kind: 'start' })
    return ended.kind === 'done'
      ? success(printableText(lines(signInName, password)))
      : refusedByDoor('reset-manager', ended)
  })
}

function lines(name: string, password: string): string[] {
  return [
    `${printableLine(name)} signs in with this password from now on; it is shown this once:`,
    '',
    `  ${password}`,
    '',
    'Every session of the account has ended, and the journal says that this was done.',
  ]
}

function newPassword(): string {
  const group = () => Array.from({ length: GROUP_LENGTH }, () => SIGNS[randomInt(SIGNS.length)]).join('')
  return Array.from({ length: GROUPS }, group).join('-')
}
