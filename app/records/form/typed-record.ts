import { createHash } from 'node:crypto'
import { canonicalJson, type JsonValue } from '../../../lib/core/kernel/canonical-json.ts'
import type { FieldProblem } from '../../../lib/usecases/door/outcome.ts'
import type { RecordChoices } from '../../../lib/usecases/records/record-choices.ts'
import type { RecordSection } from '../../../lib/usecases/records/record-kinds.ts'
import { newRecordId, readTyped } from '../../../lib/usecases/records/typed-record.ts'
import { problemsOf, type FieldLabels } from '../../_door/form-outcome.ts'
import type { FormProblem, FormState } from '../../_parts/form-state.ts'
import { FORMS } from './forms.ts'
import { labelsOf } from './labels.ts'
import { PAPER, PAPER_FORM } from './paper-form.ts'
import type { FormParts } from './parts.ts'
import { readTypedFields } from './read-typed.ts'

/** The name under which the fields of a record stand in its form, as in the input of its use case. */
export const FIELDS = 'fields'
/** Why a record is corrected or withdrawn. */
export const WHY = { name: 'why', label: 'Why' } as const

/** A form of a record as it was sent. */
export type SentRecord = {
  fields: Readonly<Record<string, unknown>>
  /** The paper it was typed from, where anything of it was typed. */
  paper: object
  /** What cannot be read, with what the schema of the record finds in the rest, in the order of the form. */
  problems: readonly FieldProblem[]
  /** Problems as the form tells them: at their fields, in its order, each begun with the label. */
  told: (problems: readonly FieldProblem[]) => FormProblem[]
}

/** Reads a form of a record as it was sent. */
export function sentRecord(section: RecordSection, typed: FormData, choices: RecordChoices): SentRecord {
  const parts = FORMS[section]
  const read = readTypedFields(parts, typed, FIELDS, choices)
  const paper = sentPaper(typed, choices)
  const labels = { ...labelsFor(parts, typed), [WHY.name]: WHY.label }
  const rest = readTyped(section, newRecordId(section), read.fields)
  const faulty = new Set(read.problems.map(({ path }) => path))
  const found =
    rest.ok || rest.problem.kind !== 'invalid' || read.problems.length === 0
      ? []
      : rest.problem.fields
          .map(({ path, message }) => ({ path: read.place(path), message }))
          .filter(({ path }) => !faulty.has(path))
  return {
    fields: read.fields,
    paper: paper.given,
    problems: [...read.problems, ...found, ...paper.problems],
    told: (problems) =>
      toldInOrder(
        problems.map(({ path, message }) => {
          const place = read.place(path) || path
          return { path: place, message: place !== WHY.name && isBlank(typed, place) ? NEEDED : message }
        }),
        labels,
      ),
  }
}

/** What is said of a field that is wrong because nothing is in it. */
export const NEEDED = 'this is needed'

/** Whether nothing was typed or chosen at a field of the form. */
export function isBlank(typed: FormData, name: string): boolean {
  return (
    name !== '' &&
    [...typed].every(
      ([each, value]) =>
        (each !== name && !each.startsWith(`${name}.`)) || value === '' || each.endsWith('.id'),
    )
  )
}

/** The paper of a form: its fields for the use case, and what of them cannot be read. */
export function sentPaper(
  typed: FormData,
  choices: RecordChoices,
): { given: object; problems: readonly FieldProblem[] } {
  const { fields, problems } = readTypedFields(PAPER_FORM, typed, PAPER, choices)
  return { given: Object.keys(fields).length === 0 ? {} : { paper: fields }, problems }
}

/** The labels of a form and of its paper, by name and in the order in which the fields stand. */
export function labelsFor(parts: FormParts, typed: FormData, prefix = FIELDS): FieldLabels {
  const texts = Object.fromEntries(
    [...typed].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])),
  )
  return { ...labelsOf(parts, prefix, texts), ...labelsOf(PAPER_FORM, PAPER, {}) }
}

/** Problems in the order of their fields; one that is told of no field that the form has stands first, for the whole. */
export function toldInOrder(problems: readonly FieldProblem[], labels: FieldLabels): FormProblem[] {
  const places = Object.keys(labels)
  const known = problems.map(({ path, message }) => ({
    path: path === '' || labels[path] !== undefined ? path : '',
    message,
  }))
  const ordered = [...known].sort((left, right) => places.indexOf(left.path) - places.indexOf(right.path))
  return problemsOf(ordered, labels)
}

/** What tells whether the same was sent as was looked at before. */
export function digestOf(input: object): string {
  return createHash('sha256')
    .update(canonicalJson(JSON.parse(JSON.stringify(input)) as JsonValue))
    .digest('hex')
}

/** A form with some of its values set by the server. */
export function withValues(state: FormState, values: Readonly<Record<string, string>>): FormState {
  return { ...state, values: { ...state.values, ...values } }
}
