import { runOnDatabase } from '../../lib/cli/run.ts'
import type { Ran } from './command-line.ts'

/** Runs a command line on the database that the environment names; the code is -1 where it opens none. */
export async function runLater(...words: readonly string[]): Promise<Ran> {
  const ran = { code: -1, out: '', err: '' }
  const io = {
    out: (text: string) => void (ran.out += text),
    err: (text: string) => void (ran.err += text),
    now: () => {
      throw new Error('commands on a database go by the clock of the database')
    },
    ...{ debug: false, width: 100 },
  }
  ran.code = (await runOnDatabase(words, io)) ?? -1
  return ran
}
