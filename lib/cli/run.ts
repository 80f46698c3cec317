import { nearestName } from '../core/kernel/nearest-name.ts'
import { readArguments } from './arguments.ts'
import type { Command } from './command.ts'
import { askCommand } from './commands/ask.ts'
import { bookCommand } from './commands/book.ts'
import { checkCommand } from './commands/check.ts'
import { explainCommand } from './commands/explain.ts'
import { matrixCommand } from './commands/matrix.ts'
import { rateCommand } from './commands/rate.ts'
import { commandHelp, PROGRAM, programHelp } from './help.ts'
import type { Io } from './io.ts'
import { INPUT_REFUSED, misuse, type Outcome } from './outcome.ts'
import { printableLine, printableText } from './printable.ts'

const COMMANDS: readonly Command[] = [
  askCommand,
  explainCommand,
  matrixCommand,
  checkCommand,
  rateCommand,
  bookCommand,
]

const HELP_WORDS: ReadonlySet<string> = new Set(['--help', '-h', 'help'])

/**
 * Runs one command line and gives its exit code: 0 answered, 1 input refused, 2 misuse. The answer goes to the output
 * stream whole, or not at all; what is wrong goes to the error stream in words.
 */
export function run(words: readonly string[], io: Io): number {
  try {
    const outcome = answer(words, io)
    if (outcome.ok) {
      io.out(outcome.value)
      return 0
    }
    const { exit, lines } = outcome.problem
    io.err(printableText(lines))
    return exit
  } catch (error) {
    const says = error instanceof Error ? error.message : String(error)
    io.err(`A fault of Kerfbook, not of the input: ${printableLine(says)}\n`)
    if (io.debug && error instanceof Error) io.err(`${error.stack ?? ''}\n`)
    else io.err('Run again with KERFBOOK_DEBUG=1 to see where.\n')
    return INPUT_REFUSED
  }
}

function answer([name, ...words]: readonly string[], io: Io): Outcome {
  if (name === undefined) return misuse('A command is missing.', helpHint())
  if (HELP_WORDS.has(name)) return helpOn(words)
  const command = COMMANDS.find((known) => known.name === name)
  if (command === undefined) {
    const nearest = nearestName(
      name,
      COMMANDS.map((known) => known.name),
    )
    const suggestion = nearest === undefined ? '' : ` Is ${nearest} meant?`
    return misuse(`The command “${printableLine(name)}” is not known.${suggestion}`, helpHint())
  }
  if (words.some((word) => word === '--help' || word === '-h'))
    return { ok: true, value: commandHelp(command) }
  const given = readArguments(words, command.options)
  const outcome = given.ok ? command.run(given.value, io) : given
  if (outcome.ok || outcome.problem.exit === INPUT_REFUSED) return outcome
  return misuse(...outcome.problem.lines, helpHint(command.name))
}

function helpOn([name]: readonly string[]): Outcome {
  const command = COMMANDS.find((known) => known.name === name)
  return { ok: true, value: command === undefined ? programHelp(COMMANDS) : commandHelp(command) }
}

function helpHint(command?: string): string {
  return `Help: ${PROGRAM} ${command === undefined ? '' : `${command} `}--help`
}
