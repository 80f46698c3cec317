import { readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { endOfDay } from '../../core/calendar/instants.ts'
import type { CalendarDate } from '../../core/calendar/dates.ts'
import type { BookFile } from '../../core/program/book-file.schema.ts'
import { readBookFile } from '../../core/program/read-book.ts'
import { clockAhead, clockStanding, type Clock } from '../../platform/clock/clock.ts'
import { readWorkbook } from '../../platform/sheets/read-workbook.ts'
import { writeWorkbook } from '../../platform/sheets/write-workbook.ts'
import { openStore, type Store } from '../../store/client.ts'
import { dropSetting, keepSetting, settingOf, settingOrMake } from '../../store/desk/settings.ts'
import { snapshotOf } from '../../store/snapshot.ts'
import { readDemoAccounts } from '../accounts/demo-accounts-file.ts'
import type { DemoAccount, Runtime } from './runtime.ts'

/** Every demonstration begins at this moment, after its last entry, whenever it is loaded, and goes on from there. */
const DEMO_ANCHOR = Date.parse('2027-05-03T15:00:00.000Z')

/** What an empty journal begins with. */
export type Beginning = 'demo' | 'own'

/** What a runtime is opened with. */
export type RuntimeSettings = {
  /** The database as the app's role. */
  url: string
  /** Where the rule books and the demonstration lie that ship. */
  seeds: string
  /** The day to stand still at (`KERFBOOK_TODAY`); refused outside a demonstration. */
  today?: CalendarDate
  /**
   * What an empty journal is to begin with: the demonstration, a program of one's own, or what was chosen before (the
   * demonstration, where nothing was). A journal that has entries stays what it is.
   */
  begin?: Beginning | 'as-before'
  /** The time zone to propose where a program is founded, an IANA name. */
  timeZone?: string
  onCommit?: (head: { n: number; hash: string }) => void
}

/** Why a runtime was not opened. */
export class RuntimeRefused extends Error {
  override readonly name = 'RuntimeRefused'
}

/** Opens the database, the clock and the books that ship, for the door to work with. */
export async function openRuntime(settings: RuntimeSettings): Promise<Runtime> {
  const store = openStore(
    settings.url,
    settings.onCommit === undefined ? {} : { onCommit: settings.onCommit },
  )
  if (settings.begin !== undefined && (await snapshotOf(store)).n === 0) {
    await settleBeginning(store, settings.begin)
  }
  const loadedAt = await settingOf(store, 'demo-loaded-at')
  return {
    store,
    clock: clockOf(loadedAt, settings.today),
    shippedBooks: shippedBooks(join(settings.seeds, 'books')),
    proposedTimeZone: settings.timeZone,
    demo: loadedAt !== undefined,
    sheetsUnderWay: new Map(),
    readWorkbook,
    writeWorkbook,
    demoAccounts: loadedAt === undefined ? [] : demoAccounts(settings.seeds),
  }
}

/**
 * What was named holds until something else is: a start without a word after `--empty`, or after a file that was
 * refused, must not fill the database with a demonstration whose password everybody knows.
 */
async function settleBeginning(store: Store, begin: Beginning | 'as-before'): Promise<void> {
  if (begin !== 'as-before') await keepSetting(store, 'beginning', begin)
  const beginning = await settingOrMake(store, 'beginning', () => 'demo')
  if (beginning === 'demo') await settingOrMake(store, 'demo-loaded-at', () => new Date().toISOString())
  else await dropSetting(store, 'demo-loaded-at')
}

/** The clock of a database: the machine's, or in a demonstration its own. */
function clockOf(loadedAt: string | undefined, today: CalendarDate | undefined): Clock {
  if (today !== undefined) {
    if (loadedAt === undefined) {
      throw new RuntimeRefused(
        'KERFBOOK_TODAY is set, and this database is no demonstration: the day of real records is the real day.',
      )
    }
    return clockStanding(new Date(endOfDay(today, 'UTC')))
  }
  return clockAhead(loadedAt === undefined ? 0 : DEMO_ANCHOR - Date.parse(loadedAt))
}

function shippedBooks(folder: string): BookFile[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => {
      const read = readBookFile(readFileSync(join(folder, name), 'utf8'))
      if (!read.ok) throw new Error(`seeds/books/${name} is no rule book that can be read`)
      return read.value
    })
}

function demoAccounts(seeds: string): DemoAccount[] {
  const { accounts, password } = readDemoAccounts(seeds)
  return accounts.map(({ signInName, says }) => ({ signInName, password, says }))
}
