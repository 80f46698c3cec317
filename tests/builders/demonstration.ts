import { cloneFilled, type TestDatabase } from './test-database.ts'

/** A database of the invented demonstration with its accounts, which is loaded once in a run and cloned since. */
export function cloneDemonstration(): Promise<TestDatabase> {
  return cloneFilled('kerfbook_demonstration', async (filling) => {
    // Everything behind the door is wanted only where the template is made.
    const { loadDemonstration } = await import('./open-on.ts')
    await loadDemonstration(filling)
  })
}
