import { z } from 'zod'
import { dateField, instantField } from '../calendar/dates.schema.ts'
import { FIRST_YEAR, LAST_YEAR, readDate } from '../calendar/dates.ts'
import { cardNumberField, idField, inchesField, nameField, textField } from '../kernel/fields.schema.ts'
import { hiddenInId, hiddenInName } from '../kernel/hidden-characters.ts'
import { nearestName } from '../kernel/nearest-name.ts'
import { levelField, ruleIdField } from '../rulebooks/kinds/common.schema.ts'
import { timeZoneField } from './program.schema.ts'
import { shorten, type PathStep } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import type { JsonType, ProblemFigures, TextForm } from './problems.ts'

type Schema = z.core.$ZodType
type Issue = z.core.$ZodIssue

/** How many unknown keys of one object are compared with the known ones. */
const MOST_COMPARED = 100

/**
 * Reads a value by a schema; nothing where it does not fit, with every fault added to the list. `at` is the path of
 * the value in the file.
 */
export function readShape<Shape extends z.ZodType>(
  schema: Shape,
  value: unknown,
  at: readonly PathStep[],
  problems: ProblemList,
): z.output<Shape> | undefined {
  const read = schema.safeParse(value)
  if (read.success) return read.data
  for (const issue of read.error.issues) {
    // What is only counted needs no looking up, so that a file with a million faults is told of in good time.
    if (problems.isFull) problems.count(issue.code === 'unrecognized_keys' ? issue.keys.length : 1)
    else addIssue(issue, schema, value, at, problems)
  }
  return undefined
}

/** Whether a value is an object that names the format; a file of another format is not read further. */
export function isFormat(
  format: string,
  value: unknown,
  problems: ProblemList,
): value is { readonly [key: string]: unknown } {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    problems.add([], value, { kind: 'wrong-type', expected: 'object', found: typeOf(value) })
    return false
  }
  const named = 'format' in value ? value.format : undefined
  if (named === undefined || named === format) return true
  problems.add(['format'], named, { kind: 'format-unknown', expected: format })
  return false
}

function addIssue(
  issue: Issue,
  schema: Schema,
  root: unknown,
  at: readonly PathStep[],
  problems: ProblemList,
): void {
  const within = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step))
  const steps = [...at, ...within]
  const found = valueAt(root, within)
  const own = schemaAt(schema, root, within)
  if (!found.isThere && issue.code !== 'unrecognized_keys') {
    problems.add(steps, undefined, { kind: 'missing-key', key: shorten(String(within.at(-1) ?? '')) })
    return
  }
  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = keysOf(own)
      for (const [index, key] of issue.keys.entries()) {
        if (problems.isFull) {
          problems.count(issue.keys.length - index)
          return
        }
        const nearest = index < MOST_COMPARED ? nearestName(key, known) : undefined
        const value = (found.value as Record<string, unknown>)[key]
        problems.add([...steps, key], value, {
          kind: 'unknown-key',
          key: shorten(key),
          ...orNothing(nearest),
        })
      }
      return
    }
    case 'invalid_union': {
      if (issue.errors.length === 0) {
        const options = (issue as { options?: readonly unknown[] }).options ?? []
        problems.add(steps, found.value, notOneOf(options, found.value))
        return
      }
      addUnion(issue.errors, own, found.value, steps, problems)
      return
    }
    case 'invalid_key':
      problems.add(steps, within.at(-1), badlyWritten('id', within.at(-1)))
      return
    case 'invalid_element':
    case 'invalid_format':
    case 'invalid_type':
    case 'invalid_value':
    case 'not_multiple_of':
    case 'too_big':
    case 'too_small':
    case 'custom':
      problems.add(steps, found.value, figuresOf(issue, own, found.value))
  }
}

/** The faults of the option that a value comes nearest to; where it fits none in kind, what would be allowed. */
function addUnion(
  errors: readonly (readonly Issue[])[],
  schema: Schema | undefined,
  value: unknown,
  steps: readonly PathStep[],
  problems: ProblemList,
): void {
  const options = schema instanceof z.ZodUnion ? (schema.options as readonly Schema[]) : []
  const alike = errors
    .map((issues, index) => ({ issues, option: options[index] }))
    .filter(({ issues }) => !issues.some((issue) => issue.path.length === 0 && isWrongInKind(issue)))
    .sort((left, right) => left.issues.length - right.issues.length)[0]
  if (alike?.option !== undefined) {
    for (const issue of alike.issues) addIssue(issue, alike.option, value, steps, problems)
    return
  }
  const allowed = errors.flat().flatMap((issue) => (issue.code === 'invalid_value' ? issue.values : []))
  problems.add(steps, value, notOneOf(allowed, value))
}

function isWrongInKind(issue: Issue): boolean {
  return issue.code === 'invalid_type' || issue.code === 'invalid_value'
}

function figuresOf(issue: Issue, own: Schema | undefined, value: unknown): ProblemFigures {
  // JSON writes no such number; one like 1e400 becomes it when it is read.
  if (value === Infinity || value === -Infinity) return { kind: 'number-too-large' }
  switch (issue.code) {
    case 'invalid_type':
      return { kind: 'wrong-type', expected: typeNamed(issue.expected), found: typeOf(value) }
    case 'invalid_value':
      return notOneOf(issue.values, value)
    case 'invalid_format':
      if (typeof value === 'string' && value.trim() === '') return { kind: 'text-empty' }
      return badlyWritten(formOf(own), value)
    case 'too_big':
      if (issue.origin === 'string')
        return { kind: 'text-too-long', most: Number(issue.maximum), letters: lengthOf(value) }
      if (issue.origin === 'array')
        return { kind: 'too-many', most: Number(issue.maximum), count: lengthOf(value) }
      return { kind: 'number-outside', most: Number(issue.maximum), exclusive: issue.inclusive === false }
    case 'too_small':
      if (issue.origin === 'string') return { kind: 'text-empty' }
      if (issue.origin === 'array') return { kind: 'too-few', least: Number(issue.minimum) }
      return { kind: 'number-outside', least: Number(issue.minimum), exclusive: issue.inclusive === false }
    case 'custom':
      return customFigures(issue, own, value)
    case 'invalid_element':
    case 'invalid_key':
    case 'invalid_union':
    case 'not_multiple_of':
    case 'unrecognized_keys':
      return { kind: 'otherwise-refused', says: issue.message }
  }
}

/** A character that nobody sees is named: the text looks as it should. */
function badlyWritten(form: TextForm, value: unknown): ProblemFigures {
  const hidden = typeof value !== 'string' || form === 'text' ? undefined : hiddenIn(form, value)
  return hidden === undefined ? { kind: 'badly-written', form } : { kind: 'hidden-character', ...hidden }
}

function hiddenIn(form: TextForm, text: string) {
  return form === 'name' ? hiddenInName(text) : hiddenInId(text)
}

/** The fields of our own say what is wrong by reading the value again: the schema's message is for people. */
function customFigures(
  { message, params }: z.core.$ZodIssueCustom,
  own: Schema | undefined,
  value: unknown,
): ProblemFigures {
  if (own === nameField || own === cardNumberField) return badlyWritten(formOf(own), value)
  if (params?.['kind'] === 'last-day-not-given') return { kind: 'last-day-not-given' }
  if (own === instantField) return { kind: 'not-an-instant' }
  if (own === timeZoneField) return { kind: 'time-zone-unknown' }
  if (own === inchesField) return { kind: 'not-a-sixteenth' }
  if (own === dateField && typeof value === 'string') {
    const read = readDate(value)
    if ('fault' in read) {
      if (read.fault === 'shape') return { kind: 'not-a-day' }
      if (read.fault === 'no-such-day') return { kind: 'no-such-day' }
      return { kind: 'year-outside', first: FIRST_YEAR, last: LAST_YEAR }
    }
    return { kind: 'last-day-not-administrative' }
  }
  return { kind: 'otherwise-refused', says: message }
}

function notOneOf(values: readonly unknown[], value: unknown): ProblemFigures {
  const allowed = values.map(String)
  const nearest = typeof value === 'string' ? nearestName(value, allowed) : undefined
  return { kind: 'not-one-of', allowed, ...orNothing(nearest) }
}

function orNothing(nearest: string | undefined): { nearest?: string } {
  return nearest === undefined ? {} : { nearest }
}

function formOf(schema: Schema | undefined): TextForm {
  if (schema === idField) return 'id'
  if (schema === levelField) return 'level'
  if (schema === nameField) return 'name'
  if (schema === cardNumberField) return 'card-number'
  if (schema === textField) return 'text'
  return schema === ruleIdField ? 'rule-id' : 'other'
}

function typeNamed(expected: string): JsonType {
  if (expected === 'string') return 'text'
  if (expected === 'int') return 'whole-number'
  if (expected === 'boolean') return 'true-or-false'
  if (expected === 'array') return 'list'
  return expected === 'number' ? 'number' : 'object'
}

function typeOf(value: unknown): JsonType {
  if (value === null || value === undefined) return 'nothing'
  if (typeof value === 'string') return 'text'
  if (typeof value === 'boolean') return 'true-or-false'
  if (typeof value === 'number') return 'number'
  return Array.isArray(value) ? 'list' : 'object'
}

function lengthOf(value: unknown): number {
  return typeof value === 'string' || Array.isArray(value) ? value.length : 0
}

function valueAt(root: unknown, steps: readonly PathStep[]): { isThere: boolean; value: unknown } {
  let value = root
  for (const step of steps) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step))
      return { isThere: false, value: undefined }
    value = (value as Record<PathStep, unknown>)[step]
  }
  return { isThere: true, value }
}

/** The schema of the value at a path; the options of a union are told apart by the value. */
function schemaAt(schema: Schema, root: unknown, steps: readonly PathStep[]): Schema | undefined {
  let own: Schema | undefined = optionFor(unwrap(schema), root)
  let value = root
  for (const step of steps) {
    value = valueAt(value, [step]).value
    own = own === undefined ? undefined : optionFor(unwrap(childOf(own, step)), value)
  }
  return own
}

function childOf(schema: Schema, step: PathStep): Schema | undefined {
  if (schema instanceof z.ZodObject) return (schema.shape as Record<string, Schema>)[String(step)]
  if (schema instanceof z.ZodArray) return schema.element
  return schema instanceof z.ZodRecord ? schema.valueType : undefined
}

function unwrap(schema: Schema | undefined): Schema | undefined {
  let own = schema
  while (own instanceof z.ZodOptional || own instanceof z.ZodExactOptional || own instanceof z.ZodDefault)
    own = own.unwrap()
  return own
}

function optionFor(schema: Schema | undefined, value: unknown): Schema | undefined {
  if (!(schema instanceof z.ZodDiscriminatedUnion)) return schema
  const key = schema.def.discriminator
  const named = valueAt(value, [key]).value
  return (schema.options as readonly Schema[]).find((option) => {
    const told = childOf(option, key)
    return told instanceof z.ZodLiteral && told.values.has(named as string)
  })
}

function keysOf(schema: Schema | undefined): readonly string[] {
  return schema instanceof z.ZodObject ? Object.keys(schema.shape) : []
}
