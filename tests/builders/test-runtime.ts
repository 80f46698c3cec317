import { cloneDemonstration } from './demonstration.ts'
import { DEMO_TODAY, openOn, openOnDatabase, type TestRuntime } from './open-on.ts'
import { cloneDatabase } from './test-database.ts'

export { DEMO_TODAY, openOnDatabase, type TestRuntime }

/** An empty journal: of a demonstration that is not yet loaded, or of a program in earnest. */
export async function openTestRuntime(begin: 'demo' | 'own', today?: string): Promise<TestRuntime> {
  return openOn(await cloneDatabase(), begin, today)
}

/** A runtime on the demonstration of this run. */
export async function openDemoRuntime(): Promise<TestRuntime> {
  return openOn(await cloneDemonstration(), 'demo', DEMO_TODAY)
}
