import { FORBIDDEN_KEYS, MOST_KEYS, MOST_NESTING, MOST_VALUES, readJson } from './json-text.ts'
import type { PathStep } from './paths.ts'
import type { ProblemList } from './problem-list.ts'

/** Reads text as JSON, or takes a value that is read already; nothing where either breaks the limits of a file. */
export function readJsonOrValue(input: unknown, problems: ProblemList): { value: unknown } | undefined {
  if (typeof input === 'string') return readJson(input, problems)
  return checkValue(input, [], { values: 0 }, problems) ? { value: input } : undefined
}

/**
 * Whether a value lies no deeper and has no more keys and values than a file may; forbidden keys are added to the
 * problems. `counted` are the values met so far.
 */
function checkValue(
  value: unknown,
  path: PathStep[],
  counted: { values: number },
  problems: ProblemList,
): boolean {
  counted.values += 1
  // A list that is too long by itself is not walked.
  const items = Array.isArray(value) ? value.length : 0
  if (counted.values + items > MOST_VALUES) {
    problems.add(path, undefined, { kind: 'too-many-values', most: MOST_VALUES })
    return false
  }
  if (typeof value !== 'object' || value === null) return true
  if (path.length >= MOST_NESTING) {
    problems.add(path, undefined, { kind: 'nested-too-deep', most: MOST_NESTING })
    return false
  }
  const isList = Array.isArray(value)
  const keys = Object.keys(value)
  if (!isList && keys.length > MOST_KEYS) {
    problems.add(path, undefined, { kind: 'too-many', most: MOST_KEYS, count: keys.length })
    return false
  }
  for (const key of keys) {
    path.push(isList ? Number(key) : key)
    if (!isList && FORBIDDEN_KEYS.has(key)) problems.add(path, undefined, { kind: 'forbidden-key', key })
    if (!checkValue((value as Record<string, unknown>)[key], path, counted, problems)) return false
    path.pop()
  }
  return true
}
