// Records the hash of every migration that is to land with the next commit: npx tsx tests/prisma/land-migrations.ts
// What stands in the last commit has landed and is never edited again; what was recorded since is recorded anew.
import { spawnSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { knownMigrations } from '../../lib/platform/database/migrations.ts'
import { LANDED_FILE, landedProblems, readLanded } from './landed-migrations.ts'

const committed = spawnSync('git', ['show', 'HEAD:tests/prisma/landed-migrations.json'], { encoding: 'utf8' })
const landed = readLanded(committed.status === 0 ? committed.stdout : '{}')
const all = Object.fromEntries(knownMigrations().map(({ name, checksum }) => [name, checksum]))
// What has landed wins, so that an edited one stays told.
const next = { ...all, ...landed }
// A migration that was put before one that has landed is told here, before it is recorded.
const early = landedProblems(landed).filter((problem) => problem.includes(' comes before '))
const problems = [...early, ...landedProblems(next)]
if (problems.length > 0) {
  console.error(problems.join('\n'))
  process.exitCode = 1
} else {
  writeFileSync(LANDED_FILE, `${JSON.stringify(next, null, 2)}\n`)
  console.log(`${Object.keys(landed).length} have landed, ${Object.keys(next).length} are recorded.`)
}
