import type { Work } from '../../core/authority/answer.ts'
import { byText } from '../../core/kernel/order.ts'
import type { Standing } from '../../core/rulebooks/standing.ts'
import { spanText } from '../../wording/days.ts'
import type { Names } from '../../wording/names.ts'
import { workKindWords } from '../../wording/work-words.ts'
import { writeCsv } from '../../wording/csv.ts'
import { answersByPerson, type Matrix } from '../matrix.ts'

/** One mark for each standing, told apart in print and without colour. */
const SIGNS = {
  independent: '#',
  'own-level': 's',
  training: 't',
  unknown: '?',
  none: '.',
} as const satisfies Record<Standing, string>

/** Items stand in groups of ten, with a space after each but the last. */
const GROUP = 10

/**
 * The matrix for people to read: the items by number, then a row of signs for each person, in blocks that fit the
 * terminal (ten items abreast at least).
 */
export function matrixText({ people, columns }: Matrix, names: Names, terminal: number): string[] {
  const shown = new Map(people.map(({ id }) => [id, shortened(names.person(id))]))
  const width = Math.max(0, ...[...shown.values()].map(widthOf))
  const groups = Math.max(1, Math.floor((terminal - width - 1) / (GROUP + 1)))
  const abreast = groups * GROUP
  const byPerson = columns.map(answersByPerson)
  const blocks: string[] = []
  for (let start = 0; start < columns.length; start += abreast) {
    const block = byPerson.slice(start, start + abreast)
    blocks.push('', `Items ${start + 1} to ${start + block.length}`)
    blocks.push(`${' '.repeat(width)}  ${columnNumbers(start, block.length)}`)
    for (const { id } of people) {
      const name = shown.get(id) ?? id
      const signs = block.map((answers) => SIGNS[answers.get(id)?.standing ?? 'unknown']).join('')
      blocks.push(`${name}${' '.repeat(width - widthOf(name))}  ${inTens(signs)}`)
    }
  }
  return [
    `${people.length} people, ${columns.length} logs, trees and expected works. Each is asked on its own days, every day counts.`,
    '# on their own   s under a supervisor   t in training   ? not on record   . no',
    '',
    ...columns.map(
      (column, place) =>
        `${String(place + 1).padStart(4)}  ${column.item}  ${column.name}, ${itemText(column.work, names)} (${spanText(column)})`,
    ),
    ...blocks,
  ]
}

/** The number of the first item of each ten, above its column. */
function columnNumbers(start: number, length: number): string {
  const numbers: string[] = []
  for (let at = 0; at < length; at += GROUP) numbers.push(String(start + at + 1).padEnd(GROUP))
  return numbers.join(' ').trimEnd()
}

function itemText({ workKind, place }: Work, names: Names): string {
  return place === undefined ? workKindWords[workKind] : `${workKindWords[workKind]} at ${names.place(place)}`
}

/** How many letters of a name stand in a row. */
const MOST_LETTERS = 36

const letters = new Intl.Segmenter()

function shortened(name: string): string {
  const seen = Array.from(letters.segment(name), ({ segment }) => segment)
  return seen.length <= MOST_LETTERS ? name : `${seen.slice(0, MOST_LETTERS - 1).join('')}…`
}

/** How many letters a reader sees: an accent written apart belongs to its letter. */
function widthOf(text: string): number {
  return Array.from(letters.segment(text)).length
}

/**
 * The matrix as CSV: one header, a row for each person, a column for each item, standings as words of the format. Each
 * row says for itself which days the items span, as known when, and the notice, so that no sorting or cutting of the
 * sheet parts an answer from them.
 */
export function matrixCsv({ people, columns }: Matrix, said: { knownAt: string; notice: string }): string {
  const byPerson = columns.map(answersByPerson)
  const firstDay = columns.map(({ first }) => first).sort(byText)[0] ?? ''
  const lastDay =
    columns
      .map(({ last }) => last)
      .sort(byText)
      .at(-1) ?? ''
  return writeCsv([
    [
      ...['person', 'name', 'first_day', 'last_day', 'known_at', 'notice'],
      ...columns.map((column) => `${column.item} ${column.name} (${spanText(column)})`),
    ],
    ...people.map(({ id, name }) => [
      ...[id, name, firstDay, lastDay, said.knownAt, said.notice],
      ...byPerson.map((answers) => answers.get(id)?.standing ?? 'unknown'),
    ]),
  ])
}

function inTens(signs: string): string {
  return signs.replace(/(.{10})(?=.)/g, '$1 ')
}
