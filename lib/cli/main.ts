import { Buffer } from 'node:buffer'
import { writeSync } from 'node:fs'
import { env, argv, stdout } from 'node:process'
import { readInstant, type Instant } from '../core/calendar/instants.ts'
import { InvariantBroken } from '../core/kernel/result.ts'
import { NotWritten, type Io } from './io.ts'
import { run, runOnDatabase } from './run.ts'
import { systemWords } from './system-words.ts'

const OUTPUT = 1
const ERRORS = 2
const A_MOMENT = 5
const USUAL_WIDTH = 100

/**
 * Writes the whole text before going on, so that nothing is cut off when the process ends. A reader who has gone
 * away (`| head`) is no fault: the rest is let go.
 */
function write(stream: typeof OUTPUT | typeof ERRORS, text: string): void {
  const bytes = Buffer.from(text)
  let written = 0
  while (written < bytes.length) {
    try {
      written += writeSync(stream, bytes, written)
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined
      if (code === 'EPIPE' || stream === ERRORS) return
      if (code !== 'EAGAIN') throw new NotWritten(systemWords('write', error))
      // The pipe is full: its reader needs a moment.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, A_MOMENT)
    }
  }
}

/** This machine's clock. */
function now(): Instant {
  const instant = readInstant(new Date().toISOString())
  if (instant === undefined) throw new InvariantBroken('the clock of this machine gives no moment')
  return instant
}

const io: Io = {
  out: (text) => write(OUTPUT, text),
  err: (text) => write(ERRORS, text),
  now,
  debug: env['KERFBOOK_DEBUG'] === '1',
  // A stream that is no terminal has no columns, and the comparison is then false.
  width: [Number(env['COLUMNS']), stdout.columns].find((columns) => columns > 0) ?? USUAL_WIDTH,
}

process.exitCode = (await runOnDatabase(argv.slice(2), io)) ?? run(argv.slice(2), io)
