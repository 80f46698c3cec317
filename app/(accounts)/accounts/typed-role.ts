import type { FieldProblem } from '../../../lib/usecases/door/outcome.ts'
import { readDay } from '../../../lib/wording/read-day.ts'
import { typedText } from '../../_door/form-outcome.ts'

/** The labels of a role's fields; where several stand in a form, each is told apart by its number. */
export function roleLabels(prefix: string, number?: number): Readonly<Record<string, string>> {
  const labels = {
    role: 'Role',
    unit: 'Unit',
    organisation: 'Organisation',
    firstDay: 'First day',
    lastDay: 'Last day',
  }
  return Object.fromEntries(
    Object.entries(labels).map(([name, label]) => [
      `${prefix}${name}`,
      number === undefined ? label : `${label} (role ${number})`,
    ]),
  )
}

/** What is wrong with fields in the order in which their labels are listed, as the fields stand in the form. */
export function inOrder(
  fields: readonly FieldProblem[],
  labels: Readonly<Record<string, string>>,
): FieldProblem[] {
  const places = Object.keys(labels)
  return [...fields].sort((left, right) => places.indexOf(left.path) - places.indexOf(right.path))
}

/** Whether anything of a role was chosen; days alone are none. */
export function isChosen(typed: FormData, prefix: string): boolean {
  return ['role', 'unit', 'organisation'].some((name) => typedText(typed, `${prefix}${name}`) !== '')
}

/** A role as it was typed, with its days as they were meant, and what of them cannot be read. */
export function typedRole(typed: FormData, prefix: string): { given: object; problems: FieldProblem[] } {
  const problems: FieldProblem[] = []
  const day = (name: string) => {
    const text = typedText(typed, `${prefix}${name}`)
    const read = readDay(text)
    if (read.ok) return read.value
    problems.push({ path: `${prefix}${name}`, message: read.problem })
    return text
  }
  const filled = (name: string) => {
    const text = typedText(typed, `${prefix}${name}`).trim()
    return text === '' ? {} : { [name]: text }
  }
  const given = {
    role: typedText(typed, `${prefix}role`),
    ...filled('unit'),
    ...filled('organisation'),
    firstDay: day('firstDay'),
    ...(typedText(typed, `${prefix}lastDay`).trim() === '' ? {} : { lastDay: day('lastDay') }),
  }
  return { given, problems }
}
