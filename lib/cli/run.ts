import { nearestName } from '../core/kernel/nearest-name.ts'
import { refusal, success, type Result } from '../core/kernel/result.ts'
import { readArguments, type Given } from './arguments.ts'
import type { Command, CommandHelp, DatabaseCommand } from './command.ts'
import { agreementCommand } from './commands/agreement.ts'
import { askCommand } from './commands/ask.ts'
import { backupCommand } from './commands/backup.ts'
import { bookCommand } from './commands/book.ts'
import { bringInCommand } from './commands/bring-in.ts'
import { checkCommand } from './commands/check.ts'
import { cutCommand } from './commands/cut.ts'
import { explainCommand } from './commands/explain.ts'
import { fromCsvCommand } from './commands/from-csv.ts'
import { matrixCommand } from './commands/matrix.ts'
import { rateCommand } from './commands/rate.ts'
import { resetManagerCommand } from './commands/reset-manager.ts'
import { restoreCommand } from './commands/restore.ts'
import { takeOutCommand } from './commands/take-out.ts'
import { verifyJournalCommand } from './commands/verify-journal.ts'
import { commandHelp, PROGRAM, programHelp } from './help.ts'
import { NotWritten, type Io } from './io.ts'
import { INPUT_REFUSED, misuse, type Outcome } from './outcome.ts'
import { printableLine, printableText } from './printable.ts'

const COMMANDS: readonly Command[] = [
  askCommand,
  explainCommand,
  matrixCommand,
  checkCommand,
  rateCommand,
  bookCommand,
  agreementCommand,
  cutCommand,
]

const DATABASE_COMMANDS: readonly DatabaseCommand[] = [
  bringInCommand,
  takeOutCommand,
  fromCsvCommand,
  verifyJournalCommand,
  backupCommand,
  restoreCommand,
  resetManagerCommand,
]

const ALL_COMMANDS = [...COMMANDS, ...DATABASE_COMMANDS]

const HELP_WORDS: ReadonlySet<string> = new Set(['--help', '-h', 'help'])

/**
 * Runs one command line and gives its exit code: 0 answered, 1 input refused, 2 misuse. The answer goes to the output
 * stream whole, or not at all; what is wrong goes to the error stream in words.
 */
export function run(words: readonly string[], io: Io): number {
  try {
    return tell(answer(words, io), io)
  } catch (error) {
    return tellFault(error, io)
  }
}

/** The same for a command line that opens the database; nothing where this one opens none. */
export async function runOnDatabase(words: readonly string[], io: Io): Promise<number | undefined> {
  const [name, ...rest] = words
  const command = DATABASE_COMMANDS.find((known) => known.name === name)
  if (command === undefined) return undefined
  try {
    const given = readGiven(rest, command)
    return tell(given.ok ? hinted(await command.run(given.value, io), command) : given.problem, io)
  } catch (error) {
    return tellFault(error, io)
  }
}

function tell(outcome: Outcome, io: Io): number {
  if (outcome.ok) {
    io.out(outcome.value)
    return 0
  }
  const { exit, lines } = outcome.problem
  io.err(printableText(lines))
  return exit
}

function tellFault(error: unknown, io: Io): number {
  if (error instanceof NotWritten) {
    io.err(`The answer could not be written: ${error.message}\n`)
    return INPUT_REFUSED
  }
  const says = error instanceof Error ? error.message : String(error)
  io.err(`A fault of Kerfbook, not of the input: ${printableLine(says)}\n`)
  if (io.debug && error instanceof Error) io.err(`${error.stack ?? ''}\n`)
  else io.err('Run again with KERFBOOK_DEBUG=1 to see where.\n')
  return INPUT_REFUSED
}

function answer([name, ...words]: readonly string[], io: Io): Outcome {
  if (name === undefined) return misuse('A command is missing.', helpHint())
  if (HELP_WORDS.has(name)) return helpOn(words)
  const command = COMMANDS.find((known) => known.name === name)
  if (command === undefined) {
    const nearest = nearestName(
      name,
      ALL_COMMANDS.map((known) => known.name),
    )
    const suggestion = nearest === undefined ? '' : ` Is ${nearest} meant?`
    return misuse(`The command “${printableLine(name)}” is not known.${suggestion}`, helpHint())
  }
  const given = readGiven(words, command)
  return given.ok ? hinted(command.run(given.value, io), command) : given.problem
}

/** What stands after the name of a command; or at once its help, or what is wrong. */
function readGiven(words: readonly string[], command: CommandHelp): Result<Given, Outcome> {
  if (words.some((word) => word === '--help' || word === '-h')) return refusal(success(commandHelp(command)))
  const given = readArguments(words, command.options)
  return given.ok ? given : refusal(hinted(given, command))
}

/** Misuse says where help is. */
function hinted(outcome: Outcome, command: CommandHelp): Outcome {
  if (outcome.ok || outcome.problem.exit === INPUT_REFUSED) return outcome
  return misuse(...outcome.problem.lines, helpHint(command.name))
}

function helpOn([name]: readonly string[]): Outcome {
  const command = ALL_COMMANDS.find((known) => known.name === name)
  return success(command === undefined ? programHelp(ALL_COMMANDS) : commandHelp(command))
}

function helpHint(command?: string): string {
  return `Help: ${PROGRAM} ${command === undefined ? '' : `${command} `}--help`
}
