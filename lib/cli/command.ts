import type { Given, OptionSpecs } from './arguments.ts'
import type { Io } from './io.ts'
import type { Outcome } from './outcome.ts'

/** One command of the command line. */
export type Command = {
  name: string
  /** One line for the list of commands. */
  summary: string
  /** How it is called, without the program's name. */
  usage: readonly string[]
  /** What else somebody should know, as paragraphs. */
  about: readonly string[]
  options: OptionSpecs
  /** Whole command lines that work on what ships. */
  examples: readonly string[]
  run: (given: Given, io: Io) => Outcome
}
