import { readFileSync } from 'node:fs'
import { bookFileSchema, type BookFile } from '../../lib/core/program/book-file.schema.ts'

const NAMES = ['federal-crosscut', 'cooperator-crosscut', 'interagency-faller']

/** The books that ship, as their files state them. */
export function shippedBookFiles(): BookFile[] {
  return NAMES.map((name) => {
    const text = readFileSync(new URL(`../../seeds/books/${name}.json`, import.meta.url), 'utf8')
    return bookFileSchema.parse(JSON.parse(text))
  })
}
