import type { Instant } from '../core/calendar/instants.ts'

/** What a command line may touch beside files: its two streams, the clock, the terminal's width, and whether faults show their stack. */
export type Io = {
  out: (text: string) => void
  err: (text: string) => void
  now: () => Instant
  debug: boolean
  /** How many letters the terminal shows in a line. */
  width: number
}
