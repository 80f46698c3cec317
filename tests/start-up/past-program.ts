import fs from 'node:fs'
import path from 'node:path'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'

const EXAMPLE = path.join(REPOSITORY, 'seeds/examples/small-program.json')

/** The small example, whose entries are stated in the future of this machine. */
export function exampleText(): string {
  return fs.readFileSync(EXAMPLE, 'utf8')
}

/** The same some years earlier: all of its days and moments, so that it was entered before today. */
export function pastProgramText(years = 4): string {
  return exampleText().replaceAll(
    /\b(20[0-9]{2})-(?=[0-9]{2}-[0-9]{2})/g,
    (_day, year: string) => `${Number(year) - years}-`,
  )
}

/** Writes a file beside a data folder, to be given to a start. */
export function fileBeside(dataFolder: string, name: string, text: string): string {
  const file = path.join(path.dirname(dataFolder), name)
  fs.writeFileSync(file, text)
  return file
}
