import { format } from 'node:util'
import { afterAll, afterEach, beforeAll } from 'vitest'
import { printFigure } from './figures.ts'
import { secondTry } from './second-try.ts'

// An unexpected console.error fails the test that made it. A test that expects one spies on it.
const unexpected: string[] = []

console.error = (...parts: unknown[]) => {
  unexpected.push(format(...parts))
}

function failOnErrors(): void {
  const seen = unexpected.splice(0)
  if (seen.length > 0) throw new Error(`unexpected console.error:\n${seen.join('\n')}`)
}

// A browser on a busy machine is late now and then. What passes only at the second try is named with the figures.
// eslint-disable-next-line no-empty-pattern -- vitest reads the pattern: it allows no name in this place
beforeAll(({}, file) => secondTry(file))
afterEach(({ task }) => {
  if ((task.result?.retryCount ?? 0) > 0 && task.result?.state !== 'fail')
    printFigure(`passed only at the second try: ${task.file.name}: ${task.name}`)
})
afterEach(failOnErrors)
afterAll(failOnErrors)
