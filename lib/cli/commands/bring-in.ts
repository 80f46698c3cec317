import { randomUUID } from 'node:crypto'
import { success } from '../../core/kernel/result.ts'
import type { DatabaseCommand } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { readText } from '../open-program.ts'
import { refused, type Outcome } from '../outcome.ts'
import { printableLine, printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { refusedByDoor, withRuntime } from '../with-runtime.ts'

/** What the door says of a file that it brought in. */
type Brought = { entries: number; facts: number; same: number }

/** A program file into the database of this machine. */
export const bringInCommand: DatabaseCommand = {
  name: 'bring-in',
  summary: 'a program file into the database: what is new or changed in it, as one entry',
  usage: ['bring-in FILE'],
  about: [
    'Into a database without entries the file comes with its history, entry by entry; into one that has them as one entry, with the facts that are new or say something else. What the file leaves out stays as it is here, and so does what the program itself is called, its time zone and its book. The same file twice changes nothing.',
    'All of it is brought in, or nothing: then every problem is said, with its path in the file. The journal says that it was done from the command line; nobody is signed in there, so it names nobody.',
    'Whoever may run this on the machine of the database could change the database without it, too; that is why it asks for no password.',
  ],
  options: {},
  examples: [`${PROGRAM} bring-in program.json`],
  run: async (given) => {
    const path = onlyOperand(given, 'FILE')
    if (!path.ok) return path
    const text = readText(path.value)
    return text.ok ? bringIn(path.value, text.value) : text
  },
}

async function bringIn(path: string, text: string): Promise<Outcome> {
  const { callCommand } = await import('../../usecases/door/call-command.ts')
  const { bringInProgram } = await import('../../usecases/program/bring-in.ts')
  return withRuntime(async (runtime) => {
    const call = { input: { text }, command: randomUUID() }
    const ended = await callCommand(runtime, bringInProgram, call, { kind: 'start' })
    if (ended.kind === 'done') return success(printableText(broughtLines(path, ended.value)))
    if (ended.kind !== 'invalid') return refusedByDoor('bring-in', ended)
    const problems = ended.fields.map(({ message }) => `  ${message}`)
    return refused(`${printableLine(path)} is refused, and nothing was brought in:`, ...problems)
    // An empty database begins with this file, and no more with the demonstration.
  }, 'own')
}

function broughtLines(path: string, { entries, facts, same }: Brought): string[] {
  const sameText = same === 0 ? '' : ` ${counted(same, 'fact')} said the same already.`
  if (entries === 0) return [`Nothing was brought in: all ${counted(same, 'fact')} of ${path} are on record.`]
  return [`Brought in ${path}: ${counted(facts, 'fact')} in ${entriesText(entries)}.${sameText}`]
}

function entriesText(count: number): string {
  return count === 1 ? '1 entry' : `${count} entries`
}

function counted(count: number, what: string): string {
  return count === 1 ? `1 ${what}` : `${count} ${what}s`
}
