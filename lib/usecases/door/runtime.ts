import type { BookFile } from '../../core/program/book-file.schema.ts'
import type { Clock } from '../../platform/clock/clock.ts'
import type { readWorkbook } from '../../platform/sheets/read-workbook.ts'
import type { writeWorkbook } from '../../platform/sheets/write-workbook.ts'
import type { Store } from '../../store/client.ts'

/** What the door works with; opened once at the start, the same for every page and command. */
export type Runtime = {
  store: Store
  clock: Clock
  /** The rule books that ship with this version; a program adopts copies. */
  shippedBooks: readonly BookFile[]
  /** The time zone that is proposed where a program is founded, an IANA name. */
  proposedTimeZone: string | undefined
  /** Whether this database was loaded with the invented demonstration. */
  demo: boolean
  /** Reads workbooks in a thread of its own, which the bundler of the pages could not start. */
  readWorkbook: typeof readWorkbook
  /** Writes one; the library is loaded once, outside of the pages. */
  writeWorkbook: typeof writeWorkbook
  /** Sheets that are being brought in by this process, by their ids; gone when it is done or has failed. */
  sheetsUnderWay: Map<string, SheetProgress>
  /** The accounts that anybody may be in a demonstration; none in any other database. */
  demoAccounts: readonly DemoAccount[]
}

/** How far the bringing in of a sheet has come: rows read, all looked at together, records being written. */
export type SheetProgress =
  | { phase: 'waiting' | 'rows' | 'together' | 'writing'; done: number; of: number }
  | { phase: 'not-done'; because: string }

/** An account of the demonstration, with the password that the sign-in page shows. */
export type DemoAccount = { signInName: string; password: string; says: string }

const KEY = Symbol.for('kerfbook.runtime')

/**
 * The runtime of this process. The server opens it, and the pages, which the bundler compiles apart from the server,
 * find it here.
 */
export function runtime(): Runtime {
  const held = (globalThis as { [KEY]?: Runtime })[KEY]
  if (held === undefined) throw new Error('The runtime was not opened: pages are served by `npm start` only.')
  return held
}

/** Makes a runtime the one of this process. */
export function holdRuntime(opened: Runtime): void {
  ;(globalThis as { [KEY]?: Runtime })[KEY] = opened
}
