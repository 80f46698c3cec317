import type { Work } from '../core/authority/answer.ts'
import { writeInches } from '../core/kernel/measures.ts'
import type {
  Capacity,
  Complexity,
  Delivery,
  Hands,
  Mark,
  SawKind,
  WorkKind,
} from '../core/rulebooks/words.ts'

/** The work as a noun: `bucking`, `felling`. */
export const workKindWords = { bucking: 'bucking', felling: 'felling' } satisfies Record<WorkKind, string>

/** The verb with what is cut, for questions: `buck a log`, `fell a tree`. */
export const workKindVerbs = { bucking: 'buck a log', felling: 'fell a tree' } satisfies Record<
  WorkKind,
  string
>

/** The saw with its article: `a crosscut saw`. */
export const sawKindWords = {
  crosscut: 'a crosscut saw',
  'chain-saw': 'a chain saw',
} satisfies Record<SawKind, string>

/** How complex, as an adjective: `moderately complex`. */
export const complexityWords = {
  least: 'least complex',
  moderate: 'moderately complex',
  high: 'highly complex',
} satisfies Record<Complexity, string>

/** The hands on the saw: `one-person`, `two-person`. */
export const handsWords = { one: 'one-person', two: 'two-person' } satisfies Record<Hands, string>

/** A capacity with its article: `a volunteer`. */
export const capacityWords = {
  employee: 'an employee',
  volunteer: 'a volunteer',
  'paid-corps-member': 'a paid corps member',
  student: 'a student',
  contractor: 'a contractor',
  'not-stated': 'somebody whose capacity is not stated',
} satisfies Record<Capacity, string>

/** How well a rule is supported. */
export const markWords = {
  published: 'published',
  'common-practice': 'common practice, no source',
  'from-memory': 'from memory',
  'program-default': 'program default',
} satisfies Record<Mark, string>

/** How a class was given. */
export const deliveryWords = {
  'in-person': 'in person',
  blended: 'online with a skills check in person',
  online: 'online only',
  'not-stated': 'delivery not stated',
} satisfies Record<Delivery, string>

/** How complex, where it may not be rated. */
export function complexityText(complexity: Complexity | 'not-rated'): string {
  return complexity === 'not-rated' ? 'not rated' : complexityWords[complexity]
}

/** A diameter with its unit: `24 1/16 in`. */
export function inchesText(inches: Work['diameter']): string {
  return `${writeInches(inches)} in`
}
