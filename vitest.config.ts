import { defineConfig } from 'vitest/config'

const long = process.env['KERFBOOK_LONG'] === '1'

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'tests/bench/**'],
    setupFiles: ['tests/setup.ts'],
    globalSetup: ['tests/test-server.ts'],
    pool: 'forks',
    // Tests wait for servers, browsers and timers nearly half of their time: three keep two cores busy.
    maxWorkers: 3,
    testTimeout: long ? 1_200_000 : 60_000,
    hookTimeout: long ? 1_200_000 : 60_000,
  },
})
