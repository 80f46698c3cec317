import { checkEdition } from '../rulebooks/edition-check.ts'
import { checkTiling } from '../rulebooks/tiling.ts'
import type { BookFile } from './book-file.schema.ts'
import { tilingFigures } from './check-books.ts'
import { writePath, type PathStep } from './paths.ts'
import type { ProblemList } from './problem-list.ts'

/** What is wrong with a book file beyond its shape: its editions, the ids in it, the orders that extend its cards. */
export function checkBookFile(file: BookFile, problems: ProblemList): void {
  const { book, editions, extensions, cautions } = file
  const cautionIds = cautions.map(({ id }) => id)
  for (const [at, edition] of editions.entries()) {
    checkBook(['editions', at, 'book'], edition.book, book.id, problems)
    for (const { path, ...fault } of checkEdition(edition, cautionIds))
      problems.add(['editions', at, ...path], undefined, { kind: 'edition-fault', fault })
  }
  for (const problem of checkTiling(editions)) {
    const at = editions.findIndex(({ id }) => id === problem.after)
    problems.add(['editions', at, 'firstDay'], editions[at]?.firstDay, tilingFigures(problem))
  }
  for (const [at, extension] of extensions.entries()) {
    const steps = ['extensions', at]
    checkBook([...steps, 'book'], extension.book, book.id, problems)
    if (extension.of.kind === 'card') {
      const { card } = extension.of
      problems.add([...steps, 'of', 'card'], card, { kind: 'refers-to-nothing', to: 'cards', id: card })
    } else if (extension.of.firstDay > extension.of.lastDay) {
      const { firstDay, lastDay } = extension.of
      const figures = {
        kind: 'span-backwards',
        firstField: 'firstDay',
        lastField: 'lastDay',
        firstDay,
        lastDay,
      } as const
      problems.add([...steps, 'of', 'lastDay'], lastDay, figures)
    }
  }
  checkTwins('editions', editions, problems)
  checkTwins('extensions', extensions, problems)
  checkTwins('cautions', cautions, problems)
}

function checkBook(steps: readonly PathStep[], named: string, own: string, problems: ProblemList): void {
  if (named !== own) problems.add(steps, named, { kind: 'not-one-of', allowed: [own] })
}

function checkTwins(list: string, records: readonly { id: string }[], problems: ProblemList): void {
  const first = new Map<string, number>()
  for (const [at, { id }] of records.entries()) {
    const before = first.get(id)
    if (before === undefined) first.set(id, at)
    else
      problems.add([list, at, 'id'], id, {
        kind: 'repeated-in-list',
        what: 'record',
        id,
        other: writePath([list, before]),
      })
  }
}
