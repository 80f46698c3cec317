import { byText } from '../kernel/order.ts'
import { programSchema, sectionSchemas, type Program } from './program.schema.ts'
import { SECTION_NAMES, type Fact, type SectionName } from './sections.ts'

/** A value is written on one line up to this many letters, and item by item where it is longer. */
const LONGEST_LINE = 160

/**
 * The program file of a program: the same text for the same facts, whatever the order of facts and keys. Sections and
 * keys stand in the order of the format, facts by id and then by the entry in which they became known. Reading it
 * gives the same facts in that order. Throws where the program breaks the format, which no program that was read does.
 */
export function writeProgram(program: Program): string {
  // Parsing puts the keys of everything in the order of the schemas.
  const frame = programSchema.parse({ ...program, ...emptySections() })
  const sections = SECTION_NAMES.map((section) => [section, sortedFacts(program, section)])
  return `${writeJson({ ...frame, ...Object.fromEntries(sections) }, 0)}\n`
}

function emptySections(): Record<string, never[]> {
  return Object.fromEntries(SECTION_NAMES.map((section) => [section, []]))
}

function sortedFacts(program: Program, section: SectionName): Fact[] {
  const facts: readonly Fact[] = program[section]
  return [...facts]
    .sort((left, right) => byText(left.id, right.id) || left.recordedIn - right.recordedIn)
    .map((fact) => withSortedObservations(sectionSchemas[section].parse(fact)))
}

/** Observations are keyed by factors of a book, which the schema does not order. */
function withSortedObservations(fact: Fact): Fact {
  if (!('observations' in fact)) return fact
  const observations = Object.entries(fact.observations).sort(([left], [right]) => byText(left, right))
  return { ...fact, observations: Object.fromEntries(observations) }
}

function writeJson(value: unknown, depth: number): string {
  const line = JSON.stringify(value)
  // The file and its lists always stand item by item, however short.
  if (typeof value !== 'object' || value === null || line.length < 3) return line
  if (depth > 1 && line.length <= LONGEST_LINE) return line
  const indent = '  '.repeat(depth + 1)
  const items = Array.isArray(value)
    ? value.map((item) => `${indent}${writeJson(item, depth + 1)}`)
    : Object.entries(value).map(
        ([key, item]) => `${indent}${JSON.stringify(key)}: ${writeJson(item, depth + 1)}`,
      )
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}']
  return `${open}\n${items.join(',\n')}\n${'  '.repeat(depth)}${close}`
}
