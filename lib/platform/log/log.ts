import { format } from 'node:util'
import { pino, type Logger } from 'pino'
import { errorNumber } from '../../wording/error-number.ts'
import { redacted, redactedText } from './redact.ts'

const LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent']

/**
 * How much is logged: `KERFBOOK_LOG`, or else everything of note where a program reads it and only trouble where a
 * person looks on.
 */
function wantedLevel(): string {
  const asked = process.env['KERFBOOK_LOG']
  if (asked !== undefined && LEVELS.includes(asked)) return asked
  return process.stdout.isTTY ? 'warn' : 'info'
}

/** The log: one line of JSON for each event, on the output stream, redacted before anything is written. */
export const log: Logger = pino({
  level: wantedLevel(),
  base: null,
  timestamp: pino.stdTimeFunctions.isoTime,
  formatters: {
    level: (label) => ({ level: label }),
    log: (object) => redacted(object) as Record<string, unknown>,
  },
  hooks: {
    logMethod(parts, method) {
      method.apply(
        this,
        parts.map((part) => (typeof part === 'string' ? redactedText(part) : part)) as typeof parts,
      )
    },
  },
})

/**
 * Logs an error under its number.
 * @param digest what names it on the page too
 * @returns the number
 */
export function logError(error: unknown, digest: string, about: Record<string, unknown>): string {
  const number = errorNumber(digest)
  log.error({ number, ...about, error }, 'an error')
  return number
}

/**
 * Takes over `console` for this process, so that what packages print is redacted too. Errors of pages reach the log
 * by their own way, under a number; here they would stand a second time.
 */
export function takeOverConsole(): void {
  console.error = (...parts: unknown[]) => {
    if (parts.some((part) => part instanceof Error && 'digest' in part)) return
    log.error({ printed: parts }, 'printed by a package')
  }
  console.warn = (...parts: unknown[]) => log.warn(redactedText(format(...parts)))
}
