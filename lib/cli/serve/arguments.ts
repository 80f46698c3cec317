import { refusal, success, type Result } from '../../core/kernel/result.ts'

/** What the start is asked for: to go on as before, or to begin in a way that is named. */
export type Start =
  { begin: 'as-before' } | { begin: 'demo' } | { begin: 'empty' } | { begin: 'from'; file: string }

export const START_HELP = `npm start [-- --empty | --from FILE | --demo]

Starts Kerfbook: database, pages and all. The first start of a database loads the invented demonstration.

  --empty       begin without it; prints a link that works once, for the first program manager
  --from FILE   begin with a program file and its history, then the same link
  --demo        begin with the demonstration, where another beginning was named before

What was named is remembered until something else is. A database that has entries keeps what it has; the options are
then refused.
Settings: PORT, HOST, DATABASE_URL, DATABASE_OWNER_URL, KERFBOOK_DATA, KERFBOOK_TIME_ZONE (README.md).
`

/** Reads the words after `npm start --`. */
export function readStart(words: readonly string[]): Result<Start | 'help', string> {
  const [word, file, ...more] = words
  if (word === undefined) return success({ begin: 'as-before' })
  if (word === '--help' || word === '-h') return success('help')
  if (word === '--empty' && file === undefined) return success({ begin: 'empty' })
  if (word === '--demo' && file === undefined) return success({ begin: 'demo' })
  if (word === '--from') {
    if (file === undefined) return refusal('--from wants the path of a program file.')
    if (more.length === 0) return success({ begin: 'from', file })
  }
  return refusal(`npm start does not know “${words.join(' ')}”. npm start -- --help says what it knows.`)
}
