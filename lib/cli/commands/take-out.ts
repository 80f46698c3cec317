import { headText } from '../../core/journal/heads.ts'
import { success } from '../../core/kernel/result.ts'
import type { DatabaseCommand } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { misuse, type Outcome } from '../outcome.ts'
import { printableText } from '../printable.ts'
import { refusedByDoor, withRuntime } from '../with-runtime.ts'
import { writeNew } from '../write-new.ts'

/** The program of the database of this machine, as a program file. */
export const takeOutCommand: DatabaseCommand = {
  name: 'take-out',
  summary: 'the whole program of the database, as a program file',
  usage: ['take-out [--into FILE]'],
  about: [
    'Every fact and every entry with its number, to be read, asked and brought in anywhere. Of accounts it holds the entries without what they did, and never a password.',
    'It goes to the output stream, or into FILE, which must not be there yet; then the head of the journal is said, to be kept with somebody else. The access log says that it was taken out.',
  ],
  options: { into: { value: 'FILE', says: 'the file to write, in place of the output stream' } },
  examples: [`${PROGRAM} take-out --into program.json`],
  run: async ({ operands, values }) => {
    if (operands.length > 0)
      return misuse('take-out reads the database. The file to write is named by --into FILE.')
    return takeOut(values.get('into'))
  },
}

async function takeOut(path: string | undefined): Promise<Outcome> {
  const { callQuery } = await import('../../usecases/door/call-query.ts')
  const { takeOutProgram } = await import('../../usecases/program/take-out.ts')
  return withRuntime(async (runtime) => {
    const ended = await callQuery(runtime, takeOutProgram, { input: {} }, { kind: 'start' })
    if (ended.kind !== 'done') return refusedByDoor('take-out', ended)
    const { text, n, head, facts, people } = ended.value
    if (path === undefined) return success(text)
    const written = writeNew(path, text)
    if (!written.ok) return written
    return success(
      printableText([
        `Taken out into ${path}: ${n} entries, ${facts} facts, ${people} people.`,
        ...(head === undefined ? [] : [`The head of the journal is ${headText(head)}`]),
      ]),
    )
  })
}
