import type { RunnerTask as Task, RunnerTestSuite as Suite } from 'vitest'

const BROWSER_TESTS = '/tests/app/'

/** Lets each test with a browser be tried once more; no other: a property that fails once has failed. */
export function secondTry(suite: Readonly<Suite>): void {
  if (suite.file.filepath.includes(BROWSER_TESTS)) suite.tasks.forEach(allow)
}

function allow(task: Task): void {
  if (task.type === 'suite') task.tasks.forEach(allow)
  else task.retry = 1
}
