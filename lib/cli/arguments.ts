import { parseArgs, type ParseArgsConfig } from 'node:util'
import { nearestName } from '../core/kernel/nearest-name.ts'
import type { Result } from '../core/kernel/result.ts'
import { misuse, type Refusal } from './outcome.ts'

/** One option of a command: the word for its value (absent: a flag), and what it says in the help. */
type OptionSpec = { value?: string; says: string }

/** The options of a command by name, without the dashes. */
export type OptionSpecs = Readonly<Record<string, OptionSpec>>

/** What stood on the command line, names checked, values not yet read. */
export type Given = {
  operands: readonly string[]
  values: ReadonlyMap<string, string>
  flags: ReadonlySet<string>
}

/** Reads the words after a command's name; every fault of form is said at once, with the nearest known name. */
export function readArguments(words: readonly string[], specs: OptionSpecs): Result<Given, Refusal> {
  const options: NonNullable<ParseArgsConfig['options']> = {}
  for (const [name, spec] of Object.entries(specs)) {
    options[name] = { type: spec.value === undefined ? 'boolean' : 'string' }
  }
  const { tokens } = parseArgs({
    args: [...words],
    options,
    strict: false,
    tokens: true,
    allowPositionals: true,
  })
  const operands: string[] = []
  const values = new Map<string, string>()
  const flags = new Set<string>()
  const faults: string[] = []
  for (const token of tokens) {
    if (token.kind === 'positional') operands.push(token.value)
    if (token.kind !== 'option') continue
    const spec = Object.hasOwn(specs, token.name) ? specs[token.name] : undefined
    const fault = faultOf(token, spec, Object.keys(specs))
    if (fault !== undefined) faults.push(fault)
    else if (values.has(token.name) || flags.has(token.name)) faults.push(`${token.rawName} is given twice.`)
    else if (token.value === undefined) flags.add(token.name)
    else values.set(token.name, token.value)
  }
  if (faults.length > 0) return misuse(...faults)
  return { ok: true, value: { operands, values, flags } }
}

type OptionToken = {
  name: string
  rawName: string
  value: string | undefined
  inlineValue: boolean | undefined
}

function faultOf(
  token: OptionToken,
  spec: OptionSpec | undefined,
  known: readonly string[],
): string | undefined {
  if (spec === undefined) {
    const nearest = nearestName(token.name, known)
    const suggestion = nearest === undefined ? '' : ` Is --${nearest} meant?`
    return `The option ${token.rawName} is not known here.${suggestion}`
  }
  if (spec.value === undefined) {
    return token.value === undefined ? undefined : `${token.rawName} takes no value.`
  }
  if (token.value === undefined || token.value === '') return `${token.rawName} wants a value: ${spec.value}.`
  if (token.inlineValue !== true && token.value.startsWith('-')) {
    return `${token.rawName} wants a value: ${spec.value}. One that begins with a dash is written ${token.rawName}=${token.value}.`
  }
  return undefined
}
