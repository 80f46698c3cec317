import type { CalendarDate } from '../../core/calendar/dates.ts'
import { refusal, success, type Result } from '../../core/kernel/result.ts'
import { readAddress, type ServerAddress } from '../server/address.ts'
import type { DatabaseSettings } from './open-database.ts'
import { environmentSchema } from './settings.schema.ts'

/** All that the environment settles. */
export type Settings = {
  database: DatabaseSettings
  address: ServerAddress
  /** The zone that the page to begin with proposes, an IANA name. */
  timeZone: string | undefined
  /** The day a demonstration stands still at. */
  today: CalendarDate | undefined
}

const OWNER_ALONE =
  'DATABASE_OWNER_URL is set and DATABASE_URL is not. The owner brings the tables up to date; name the role that serves, too.'

/**
 * Reads the settings from the environment.
 * @returns the settings, or a sentence for each that is wrong, all at once
 */
export function readSettings(
  environment: Readonly<Record<string, string | undefined>>,
): Result<Settings, string[]> {
  const address = readAddress(environment)
  const read = environmentSchema.safeParse(environment)
  const alone = isSet(environment['DATABASE_OWNER_URL']) && !isSet(environment['DATABASE_URL'])
  if (!address.ok || !read.success || alone) {
    const problems = [
      ...(address.ok ? [] : address.problem),
      ...(read.success ? [] : read.error.issues.map(({ message }) => message)),
      ...(alone ? [OWNER_ALONE] : []),
    ]
    return refusal(problems)
  }
  const { DATABASE_URL, DATABASE_OWNER_URL, KERFBOOK_DATA, KERFBOOK_TIME_ZONE, KERFBOOK_TODAY } = read.data
  return success({
    database: {
      ...(DATABASE_URL === undefined ? {} : { databaseUrl: DATABASE_URL }),
      ...(DATABASE_OWNER_URL === undefined ? {} : { databaseOwnerUrl: DATABASE_OWNER_URL }),
      ...(KERFBOOK_DATA === undefined ? {} : { dataFolder: KERFBOOK_DATA }),
    },
    address: address.value,
    timeZone: KERFBOOK_TIME_ZONE,
    today: KERFBOOK_TODAY,
  })
}

function isSet(value: string | undefined): boolean {
  return value !== undefined && value.trim() !== ''
}
