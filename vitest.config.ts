import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { defineConfig } from 'vitest/config'

const long = process.env['KERFBOOK_LONG'] === '1'

/** Files with a browser take longest, so they come first: a long one that is begun last keeps one core waiting. */
class BrowsersFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isApp = ({ moduleId }: TestSpecification) => moduleId.includes('/tests/app/')
    const sorted = await super.sort(files)
    return [...sorted.filter(isApp), ...sorted.filter((file) => !isApp(file))]
  }
}

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'tests/bench/**'],
    setupFiles: ['tests/setup.ts'],
    globalSetup: ['tests/test-server.ts'],
    pool: 'forks',
    sequence: { sequencer: BrowsersFirst },
    // Tests wait for servers, browsers and timers nearly half of their time: three keep two cores busy.
    maxWorkers: 3,
    testTimeout: long ? 1_200_000 : 60_000,
    hookTimeout: long ? 1_200_000 : 60_000,
  },
})
