import { existsSync, readFileSync } from 'node:fs'
import { adoptBook } from '../lib/core/program/adopt-book.ts'
import { readBookFile } from '../lib/core/program/read-book.ts'
import { readProgram } from '../lib/core/program/read-program.ts'

// Prints the facts of a shipped book as recorded in one entry, for a program file that is written by hand:
//   npx tsx seeds/adopt-book.ts federal-crosscut 1
// A program file named third says which cautions are known already.
const [name = '', entry = '', programFile] = process.argv.slice(2)
const recordedIn = Number(entry)
if (!/^[a-z0-9-]+$/.test(name) || !Number.isSafeInteger(recordedIn) || recordedIn < 1) {
  console.error('npx tsx seeds/adopt-book.ts BOOK ENTRY [PROGRAM-FILE], such as: federal-crosscut 1')
  process.exit(2)
}

if (!existsSync(new URL(`./books/${name}.json`, import.meta.url))) {
  console.error(`No book ${name} is in seeds/books.`)
  process.exit(2)
}
const book = readBookFile(readFileSync(new URL(`./books/${name}.json`, import.meta.url), 'utf8'))
if (!book.ok) throw new Error(`the book ${name} is broken: ${JSON.stringify(book.problem)}`)
const program = programFile === undefined ? undefined : readProgram(readFileSync(programFile, 'utf8'))
if (program?.ok === false) throw new Error(`${programFile ?? ''} is not good; run kerfbook check on it first`)
console.log(JSON.stringify(adoptBook(book.value, recordedIn, program?.value.cautions), null, 2))
