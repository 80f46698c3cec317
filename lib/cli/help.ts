import type { OptionSpecs } from './arguments.ts'
import type { CommandHelp } from './command.ts'

/** How the program is called. */
export const PROGRAM = 'npm run -s kerfbook --'

/** The help of the whole program. */
export function programHelp(commands: readonly CommandHelp[]): string {
  const longest = Math.max(...commands.map((command) => command.name.length))
  return [
    'Kerfbook: who may do which bucking and felling work with a crosscut saw, on which days.',
    'It computes on files, or on the database of this machine, and writes nothing but its answer; only bring-in and',
    'reset-manager change the database.',
    '',
    'Commands:',
    ...commands.map((command) => `  ${command.name.padEnd(longest)}  ${command.summary}`),
    '',
    `More about one: ${PROGRAM} ask --help`,
    '',
    'Examples:',
    ...commands.flatMap((command) => command.examples.slice(0, 1)).map((example) => `  ${example}`),
    '',
    'Exit codes: 0 answered, 1 the input is refused, 2 the command line is not understood.',
    'Authority is not safety. This says who may, not that anything should be cut.',
    '',
  ].join('\n')
}

/** The help of one command. */
export function commandHelp(command: CommandHelp): string {
  return [
    `${command.name}: ${command.summary}`,
    '',
    ...command.usage.map((line) => `  ${PROGRAM} ${line}`),
    '',
    ...command.about.flatMap((paragraph) => [paragraph, '']),
    'Options:',
    ...optionLines(command.options),
    '',
    'Examples:',
    ...command.examples.map((example) => `  ${example}`),
    '',
  ].join('\n')
}

function optionLines(specs: OptionSpecs): string[] {
  const named = Object.entries(specs).map(([name, spec]) => ({
    name: spec.value === undefined ? `--${name}` : `--${name} ${spec.value}`,
    says: spec.says,
  }))
  const longest = Math.max(...named.map((option) => option.name.length))
  return named.map((option) => `  ${option.name.padEnd(longest)}  ${option.says}`)
}
