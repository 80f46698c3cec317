import { spawn, type ChildProcess } from 'node:child_process'
import { createInterface } from 'node:readline'
import { join } from 'node:path'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import type { Said, Sent } from './writing-program.ts'

/** What all the processes of a test have sent and been answered, told by their lines. */
export type Ledger = { sent: Map<string, Sent>; answered: Map<string, number>; unexpected: Said[] }

/** A running copy of writing-program.ts. */
export type WritingProcess = {
  process: ChildProcess
  /** The database's address, once it can be asked; fails where the program ends before. */
  ready: Promise<string>
  /** Lets it begin, with commands to send again. */
  begin(again: readonly Sent[]): void
  /** Comes when so many more commands have been answered, or the program has ended. */
  answers(count: number): Promise<void>
  /** Comes with the exit code once it has ended and all that it said is in the ledger. */
  ended: Promise<number | null>
  /** Everything it said beside commands and answers, for a failure to show. */
  said: readonly string[]
}

/** Starts the program on a data folder. What it says of commands goes into the ledger as it is said. */
export function startWriting(
  dataFolder: string,
  ledger: Ledger,
  ...words: readonly string[]
): WritingProcess {
  const script = join(REPOSITORY, 'tests/durability/writing-program.ts')
  const child = spawn(process.execPath, ['--import', 'tsx', script, ...words], {
    cwd: REPOSITORY,
    env: { ...process.env, KERFBOOK_DATA: dataFolder },
    stdio: ['pipe', 'pipe', 'pipe'],
  })
  const said: string[] = []
  let answered = 0
  let isOver = false
  let wake: () => void = () => undefined
  // A killed program no longer reads.
  child.stdin.on('error', () => undefined)
  child.stderr.setEncoding('utf8').on('data', (text: string) => said.push(text))
  let isReady: (url: string) => void
  let isNotReady: (error: Error) => void
  const ready = new Promise<string>((resolve, reject) => {
    isReady = resolve
    isNotReady = reject
  })
  ready.catch(() => undefined)
  createInterface({ input: child.stdout }).on('line', (line) => {
    // A line that was cut off by a kill says nothing: the pipe takes short lines whole.
    const told = JSON.parse(line) as Said
    if ('sent' in told) ledger.sent.set(told.sent.command, told.sent)
    else if ('answered' in told) {
      answered += 1
      ledger.answered.set(told.answered, told.n)
      wake()
    } else if ('ready' in told) isReady(told.ready)
    else if ('unexpected' in told) ledger.unexpected.push(told)
    else said.push(line)
  })
  const ended = new Promise<number | null>((resolve) =>
    child.on('close', (code) => {
      isOver = true
      isNotReady(new Error(`it ended before it was ready:\n${said.join('\n')}`))
      wake()
      resolve(code)
    }),
  )
  return {
    process: child,
    ready,
    begin: (again) => void child.stdin.write(`${JSON.stringify(again)}\n`),
    async answers(count) {
      const wanted = answered + count
      while (answered < wanted && !isOver) await new Promise<void>((resolve) => (wake = resolve))
    },
    ended,
    said,
  }
}
