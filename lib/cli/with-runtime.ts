import { env } from 'node:process'
import { fileURLToPath } from 'node:url'
import type { NotDone } from '../usecases/door/outcome.ts'
import type { Beginning } from '../usecases/door/open-runtime.ts'
import type { Runtime } from '../usecases/door/runtime.ts'
import { refusalSentence } from '../wording/refusals.ts'
import { refused, type Outcome } from './outcome.ts'
import { refusedByDatabase } from './refused-by-database.ts'

/**
 * Opens the database of this machine for one command, whether Kerfbook runs on it or not, and lets `work` call use
 * cases on it as the start does. What cannot be opened is refused in words.
 * @param begin what an empty journal is to begin with; left out, that stays as it was
 */
export async function withRuntime(
  work: (runtime: Runtime) => Promise<Outcome>,
  begin?: Beginning,
): Promise<Outcome> {
  // Loaded here and not above: commands that compute on files open no database, and need not wait for it.
  const { readSettings } = await import('../platform/database/settings.ts')
  const { openBeside } = await import('../platform/database/open-beside.ts')
  const { writeWaiting } = await import('../store/access-log.ts')
  const { openRuntime } = await import('../usecases/door/open-runtime.ts')
  const { openHeads } = await import('./serve/heads.ts')
  const settings = readSettings(env)
  if (!settings.ok) return refused(...settings.problem)
  try {
    const database = await openBeside(settings.value.database, () => undefined)
    try {
      const heads = openHeads(database.dataFolder)
      const runtime = await openRuntime({
        url: database.url,
        seeds: fileURLToPath(new URL('../../seeds', import.meta.url)),
        onCommit: heads.append,
        ...(begin === undefined ? {} : { begin }),
      })
      try {
        return await work(runtime)
      } finally {
        await writeWaiting(runtime.store)
        await runtime.store.close()
      }
    } finally {
      await database.close()
    }
  } catch (error) {
    return refusedByDatabase(error)
  }
}

/** Why a use case was not carried out, as the refusal of a command. */
export function refusedByDoor(name: string, ended: NotDone): Outcome {
  switch (ended.kind) {
    case 'refused':
      return refused(refusalSentence(ended.because))
    case 'invalid':
      return refused(...ended.fields.map(({ message }) => message))
    case 'stale':
    case 'not-found':
    case 'sign-in-wanted':
    case 'password-wanted':
    case 'forbidden':
      throw new Error(`${name} ended as ${ended.kind}`)
  }
}
