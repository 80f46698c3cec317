import { format } from 'node:util'
import { afterAll, afterEach } from 'vitest'

// An unexpected console.error fails the test that made it. A test that expects one spies on it.
const unexpected: string[] = []

console.error = (...parts: unknown[]) => {
  unexpected.push(format(...parts))
}

function failOnErrors(): void {
  const seen = unexpected.splice(0)
  if (seen.length > 0) throw new Error(`unexpected console.error:\n${seen.join('\n')}`)
}

afterEach(failOnErrors)
afterAll(failOnErrors)
