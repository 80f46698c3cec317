import { log } from '../../platform/log/log.ts'
import { callCommand, type CommandCall } from '../door/call-command.ts'
import type { Caller } from '../door/caller.ts'
import type { Outcome } from '../door/outcome.ts'
import type { Runtime } from '../door/runtime.ts'
import { refusalSentence } from '../../wording/refusals.ts'
import { bringInSheet } from './bring-in-sheet.ts'

/** How long whoever sent it is kept waiting for the end before they are told how far it has come, in milliseconds. */
const WAITED = 3000

type Brought = { entry: number; added: number; changed: number }

/**
 * Begins to bring in a sheet of the desk. It goes on whoever waits or does not: closing the page changes nothing. Answers
 * how it ended where that is soon, else that it is under way; then the sheet itself says how it ended.
 */
export async function startBringingIn(
  runtime: Runtime,
  call: CommandCall & { input: { sheet: string } },
  caller: Caller,
): Promise<Outcome<Brought> | 'under-way'> {
  const { sheet } = call.input
  const underWay = runtime.sheetsUnderWay
  if (isUnderWay(runtime, sheet)) return 'under-way'
  underWay.set(sheet, { phase: 'waiting', done: 0, of: 0 })
  const ended = callCommand(runtime, bringInSheet, call, caller).then(
    (outcome) => {
      if (outcome.kind === 'done') underWay.delete(sheet)
      else underWay.set(sheet, { phase: 'not-done', because: becauseOf(outcome) })
      return outcome
    },
    (error: unknown) => {
      underWay.set(sheet, {
        phase: 'not-done',
        because: 'Something broke. Nothing was brought in; try it again.',
      })
      throw error
    },
  )
  let timer: ReturnType<typeof setTimeout> | undefined
  const later = new Promise<'under-way'>((resolve) => {
    timer = setTimeout(() => resolve('under-way'), WAITED)
  })
  try {
    const first = await Promise.race([ended, later])
    // Who was answered is not told a second time.
    if (first !== 'under-way') underWay.delete(sheet)
    // Where nobody waits any more, the page says that it broke, and the log why.
    else ended.catch((error: unknown) => log.error({ err: error }, 'bringing in a sheet broke'))
    return first
  } finally {
    clearTimeout(timer)
  }
}

/** Whether a sheet is being brought in by this process. */
export function isUnderWay({ sheetsUnderWay }: Runtime, sheet: string): boolean {
  const progress = sheetsUnderWay.get(sheet)
  return progress !== undefined && progress.phase !== 'not-done'
}

function becauseOf(outcome: Exclude<Outcome<unknown>, { kind: 'done' }>): string {
  if (outcome.kind === 'refused') return refusalSentence(outcome.because)
  if (outcome.kind === 'invalid') return outcome.fields.map(({ message }) => message).join(' ')
  return 'It could not be brought in. Look at the sheet once more.'
}
