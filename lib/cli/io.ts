import type { Instant } from '../core/calendar/instants.ts'

/** That a stream does not take what is written to it, in words: no fault of the program, and no answer. */
export class NotWritten extends Error {
  override readonly name = 'NotWritten'
}

/** What a command line may touch beside files: its two streams, the clock, the terminal's width, and whether faults show their stack. */
export type Io = {
  /** Throws `NotWritten` where the stream does not take the text. */
  out: (text: string) => void
  err: (text: string) => void
  now: () => Instant
  debug: boolean
  /** How many letters the terminal shows in a line. */
  width: number
}
