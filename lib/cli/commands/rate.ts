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
import { latestEdition, openBooks } from '../open-books.ts'
import { refused, type Refusal } from '../outcome.ts'
import { printableLine, printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { readWorksheetFile } from '../read-worksheet.ts'
import { shippedBooks } from '../shipped-books.ts'

/** The book whose worksheet is used where neither the file nor the command names one; the answer says so. */
const USUAL_BOOK = 'federal-crosscut'

/** The edition that rates, its book, and who named it: the command, the worksheet, or nobody. */
type Chosen = { book: string; edition: ShippedEdition; namedBy: 'command' | 'worksheet' | 'nobody' }

/** How complex a worksheet of what was seen makes a log or tree. */
export const rateCommand: Command = {
  name: 'rate',
  summary: 'how complex a worksheet of what was seen makes a log or tree, and what made it so',
  usage: ['rate WORKSHEET [--book FILE-OR-ID]'],
  about: [
    'WORKSHEET is a JSON file of the format kerfbook-worksheet/1: the work kind, and what was seen at each factor.',
    `It is rated by the latest edition of the book that --book names (a book file, a program file, or the id of a book that ships); else by the edition it names, by the latest of the book it names, or by ${USUAL_BOOK}. The answer says by which.`,
  ],
  options: {
    book: { value: 'FILE-OR-ID', says: 'the book to rate by, whatever the worksheet names' },
    json: { says: 'print data' },
  },
  examples: [
    `${PROGRAM} rate seeds/examples/worksheet-log.json`,
    `${PROGRAM} rate seeds/examples/worksheet-log.json --book cooperator-crosscut`,
  ],
  run: (given) => {
    const file = onlyOperand(given, 'WORKSHEET')
    if (!file.ok) return file
    const worksheet = readWorksheetFile(file.value)
    if (!worksheet.ok) return worksheet
    const chosen = chooseEdition(worksheet.value, given.values.get('book'))
    if (!chosen.ok) return chosen
    const { rules } = chosen.value.edition
    const rated = rateWorksheet(rules, worksheet.value.workKind, worksheet.value.observations)
    if (!rated.ok) {
      return refused(
        `${printableLine(file.value)} cannot be rated:`,
        ...rated.problem.map((problem) => `  ${printableLine(worksheetProblemSentence(problem))}`),
      )
    }
    const text = given.flags.has('json')
      ? `${JSON.stringify(ratingJson(worksheet.value, chosen.value, rated.value), null, 2)}\n`
      : printableText(ratingLines(worksheet.value, chosen.value, rated.value))
    return success(text)
  },
}

function chooseEdition(
  { edition: id, book }: WorksheetFile,
  fileOrId: string | undefined,
): Result<Chosen, Refusal> {
  if (fileOrId !== undefined) {
    const open = openBooks(fileOrId)
    if (!open.ok) return open
    const [first] = open.value.books
    const latest = latestEdition(first)
    if (first === undefined || latest === undefined)
      return refused(`${printableLine(fileOrId)} holds no book with an edition to rate by.`)
    return success({ book: first.book.name, edition: latest, namedBy: 'command' })
  }
  const books = shippedBooks()
  if (!books.ok) return books
  const namedBy = id === undefined && book === undefined ? 'nobody' : 'worksheet'
  if (id !== undefined) {
    const editions = books.value.flatMap((file) =>
      file.editions.map((edition) => ({ book: file.book.name, edition })),
    )
    const found = editions.find(({ edition }) => edition.id === id)
    return found === undefined
      ? unknownName(
          'edition',
          id,
          editions.map(({ edition }) => edition.id),
        )
      : success({ ...found, namedBy })
  }
  const wanted = books.value.find((file) => file.book.id === (book ?? USUAL_BOOK))
  const latest = latestEdition(wanted)
  return wanted === undefined || latest === undefined
    ? unknownName(
        'book',
        book ?? USUAL_BOOK,
        books.value.map((file) => file.book.id),
      )
    : success({ book: wanted.book.name, edition: latest, namedBy })
}

function unknownName(noun: string, name: string, known: readonly string[]): { ok: false; problem: Refusal } {
  const nearest = nearestName(name, known)
  const suggestion = nearest === undefined ? '' : ` Is ${nearest} meant?`
  return refused(`No ${noun} that ships is called “${name}”.${suggestion} There are ${joinedByAnd(known)}.`)
}

function ratingLines(
  worksheet: WorksheetFile,
  { book, edition, namedBy }: Chosen,
  rating: WorksheetRating,
): string[] {
  const seen = rating.factors.map((factor) => `  ${factorSentence(factor)}`)
  return [
    `A worksheet for ${workKindWords[worksheet.workKind]}, by “${book}”, in the edition “${edition.name}”.`,
    ...(namedBy === 'nobody' ? ['The worksheet names no book; --book rates it by another.'] : []),
    '',
    ...worksheetSentences(rating),
    ...(seen.length === 0 ? [] : ['', 'What was seen:', ...seen]),
    '',
    NO_PUBLISHED_RATING,
    AUTHORITY_IS_NOT_SAFETY,
  ]
}

function ratingJson(worksheet: WorksheetFile, { edition, namedBy }: Chosen, rating: WorksheetRating): object {
  return {
    format: 'kerfbook-rating/1',
    notice: `${NO_PUBLISHED_RATING} ${AUTHORITY_IS_NOT_SAFETY}`,
    book: edition.book,
    edition: edition.id,
    namedBy,
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
