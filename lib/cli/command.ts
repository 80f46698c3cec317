import type { Given, OptionSpecs } from './arguments.ts'
import type { Io } from './io.ts'
import type { Outcome } from './outcome.ts'

/** What the help says of a command. */
export type CommandHelp = {
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
}

/** One command of the command line. */
export type Command = CommandHelp & { run: (given: Given, io: Io) => Outcome }

/** A command that opens the database of this machine, and so answers later. */
export type DatabaseCommand = CommandHelp & { run: (given: Given, io: Io) => Promise<Outcome> }
