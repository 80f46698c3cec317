import { nearestName } from '../../core/kernel/nearest-name.ts'
import { success, type Result } from '../../core/kernel/result.ts'
import type { ShippedEdition } from '../../core/rulebooks/books.schema.ts'
import type { WorksheetFile } from '../../core/work/worksheet-file.schema.ts'
import { rateWorksheet, type WorksheetRating } from '../../core/work/worksheet.ts'
import { joinedByAnd } from '../../wording/lists.ts'
import { AUTHORITY_IS_NOT_SAFETY, NO_PUBLISHED_RATING } from '../../wording/notice.ts'
import { workKindWords } from '../../wording/work-words.ts'
import { factorSentence, worksheetProblemSentence, worksheetSentences } from '../../wording/worksheets.ts'
import type { Command } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { refused, type Refusal } from '../outcome.ts'
import { printableLine, printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { readWorksheetFile } from '../read-worksheet.ts'
import { shippedBooks } from '../shipped-books.ts'

/** The book whose worksheet is used where a file names none. */
const USUAL_BOOK = 'federal-crosscut'

/** How complex a worksheet of what was seen makes a log or tree. */
export const rateCommand: Command = {
  name: 'rate',
  summary: 'how complex a worksheet of what was seen makes a log or tree, and what made it so',
  usage: ['rate WORKSHEET'],
  about: [
    'WORKSHEET is a JSON file of the format kerfbook-worksheet/1: the work kind, and what was seen at each factor.',
    `It is rated by the edition it names, by the latest of the book it names, or by ${USUAL_BOOK}.`,
  ],
  options: { json: { says: 'print data' } },
  examples: [`${PROGRAM} rate seeds/examples/worksheet-log.json`],
  run: (given) => {
    const file = onlyOperand(given, 'WORKSHEET')
    if (!file.ok) return file
    const worksheet = readWorksheetFile(file.value)
    if (!worksheet.ok) return worksheet
    const edition = findEdition(worksheet.value)
    if (!edition.ok) return edition
    const rated = rateWorksheet(edition.value.rules, worksheet.value.workKind, worksheet.value.observations)
    if (!rated.ok) {
      return refused(
        `${printableLine(file.value)} cannot be rated:`,
        ...rated.problem.map((problem) => `  ${printableLine(worksheetProblemSentence(problem))}`),
      )
    }
    const text = given.flags.has('json')
      ? `${JSON.stringify(ratingJson(worksheet.value, edition.value, rated.value), null, 2)}\n`
      : printableText(ratingLines(worksheet.value, edition.value, rated.value))
    return success(text)
  },
}

function findEdition({ edition: id, book }: WorksheetFile): Result<ShippedEdition, Refusal> {
  const books = shippedBooks()
  if (!books.ok) return books
  const editions = books.value.flatMap((file) => file.editions)
  if (id !== undefined) {
    const found = editions.find((edition) => edition.id === id)
    return found === undefined
      ? unknownName(
          'edition',
          id,
          editions.map((edition) => edition.id),
        )
      : success(found)
  }
  const ofBook = editions
    .filter((edition) => edition.book === (book ?? USUAL_BOOK))
    .sort((left, right) => (left.firstDay < right.firstDay ? 1 : -1))
  const latest = ofBook[0]
  return latest === undefined
    ? unknownName('book', book ?? USUAL_BOOK, [...new Set(editions.map((edition) => edition.book))])
    : success(latest)
}

function unknownName(noun: string, name: string, known: readonly string[]): { ok: false; problem: Refusal } {
  const nearest = nearestName(name, known)
  const suggestion = nearest === undefined ? '' : ` Is ${nearest} meant?`
  return refused(`No ${noun} that ships is called “${name}”.${suggestion} There are ${joinedByAnd(known)}.`)
}

function ratingLines(worksheet: WorksheetFile, edition: ShippedEdition, rating: WorksheetRating): string[] {
  const seen = rating.factors.map((factor) => `  ${factorSentence(factor)}`)
  return [
    `A worksheet for ${workKindWords[worksheet.workKind]}, by the edition “${edition.name}”.`,
    '',
    ...worksheetSentences(rating),
    ...(seen.length === 0 ? [] : ['', 'What was seen:', ...seen]),
    '',
    NO_PUBLISHED_RATING,
    AUTHORITY_IS_NOT_SAFETY,
  ]
}

function ratingJson(worksheet: WorksheetFile, edition: ShippedEdition, rating: WorksheetRating): object {
  return {
    format: 'kerfbook-rating/1',
    notice: `${NO_PUBLISHED_RATING} ${AUTHORITY_IS_NOT_SAFETY}`,
    edition: edition.id,
    workKind: worksheet.workKind,
    complexity: rating.complexity,
    factors: rating.factors.map(({ rule, option, floor }) => ({
      rule: rule.id,
      factor: rule.factor,
      option,
      floor,
    })),
    madeBy: [
      ...rating.madeByFactors.map(({ rule }) => rule.id),
      ...rating.madeByStacking.map(({ rule }) => rule.id),
    ],
    missing: rating.missing.map(({ factor }) => factor),
  }
}
