import type { BookPage, BookRule, EditionPage } from '../../core/rulebooks/book-text.ts'
import { isSameEdition, type EditionDiff, type FigureChange } from '../../core/rulebooks/edition-diff.ts'
import { MARKS } from '../../core/rulebooks/words.ts'
import { inForceSentence, successorSentence } from '../../wording/book-pages.ts'
import { bookSectionWords } from '../../wording/editions.ts'
import { joinedByAnd } from '../../wording/lists.ts'
import { markWords } from '../../wording/work-words.ts'

/** A book as a text to read: editions, levels, and every rule with its figures, source and mark. */
export function bookPageText(page: BookPage): string[] {
  return [page.name, page.says, ...page.editions.flatMap((edition) => ['', ...editionLines(edition)])]
}

function editionLines(edition: EditionPage): string[] {
  const marks = MARKS.filter((mark) => edition.marks[mark] > 0).map(
    (mark) => `${edition.marks[mark]} ${markWords[mark].replace(',', ' with')}`,
  )
  return [
    `Edition ${edition.id}: ${edition.name}`,
    `  ${edition.says}`,
    `  ${inForceSentence(edition)}`,
    ...(edition.successor === undefined ? [] : [`  ${successorSentence(edition.successor)}`]),
    `  Levels, lowest first: ${edition.levels.map((level) => level.level).join(', ')}.`,
    `  How well its rules are supported: ${joinedByAnd(marks)}.`,
    ...edition.sections.flatMap(({ section, rules }) => [
      '',
      `  ${bookSectionWords[section]}`,
      ...rules.flatMap(ruleLines),
    ]),
  ]
}

function ruleLines(rule: BookRule): string[] {
  const figures = rule.figures.map(({ name, value }) => `${name} ${value === '' ? 'none' : value}`).join('; ')
  const confirmed = rule.confirmed === undefined ? '' : rule.confirmed ? ', confirmed' : ', not confirmed'
  return [
    `    ${rule.id}: ${rule.says}`,
    ...(figures === '' ? [] : [`      ${figures}`]),
    `      ${rule.source} (${markWords[rule.mark]}${confirmed})`,
    ...(rule.disagrees === undefined ? [] : [`      Another source says: ${rule.disagrees}`]),
  ]
}

/** What changes from one edition to another, as a text to read. */
export function diffText(diff: EditionDiff, from: string, to: string): string[] {
  const { levels, rules } = diff
  if (isSameEdition(diff)) return [`From ${from} to ${to} nothing changes in ${rules.same} rules.`]
  return [
    `From ${from} to ${to}`,
    ...section('The edition', diff.edition.map(changeLine)),
    ...section('Levels added', levels.added),
    ...section('Levels removed', levels.removed),
    ...section(
      'Levels changed',
      levels.changed.flatMap(({ level, changes }) => [level, ...changes.map(indented)]),
    ),
    ...section(
      'Rules added',
      rules.added.map((rule) => `${rule.id}: ${rule.says}`),
    ),
    ...section(
      'Rules removed',
      rules.removed.map((rule) => `${rule.id}: ${rule.says}`),
    ),
    ...section(
      'Rules changed',
      rules.changed.flatMap(({ id, changes }) => [id, ...changes.map(indented)]),
    ),
    '',
    `The same in both: ${rules.same} ${rules.same === 1 ? 'rule' : 'rules'}.`,
  ]
}

function section(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', heading, ...lines.map((line) => `  ${line}`)]
}

function indented(change: FigureChange): string {
  return `  ${changeLine(change)}`
}

function changeLine({ name, before, after }: FigureChange): string {
  if (before === undefined) return `${name}: now ${after ?? ''}, not stated before`
  return after === undefined
    ? `${name}: was ${before}, no longer stated`
    : `${name}: was ${before}, now ${after}`
}
