import { databaseTroubleSentence, type DatabaseTrouble } from '../../wording/database-troubles.ts'

/**
 * Why the database cannot be opened, thrown from anywhere below {@link openDatabase} so that one place at the start
 * prints it. The message is the plain sentence; `trouble` is the same as data. Any other error is a fault of the program.
 */
export class DatabaseRefused extends Error {
  override readonly name = 'DatabaseRefused'
  readonly trouble: DatabaseTrouble

  constructor(trouble: DatabaseTrouble, options?: ErrorOptions) {
    super(databaseTroubleSentence(trouble), options)
    this.trouble = trouble
  }
}

/** The code of an error of Node or PostgreSQL (`ENOSPC`, `28P01`), or undefined where it has none. */
export function codeOf(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null || !('code' in error)) return undefined
  return typeof error.code === 'string' ? error.code : undefined
}
