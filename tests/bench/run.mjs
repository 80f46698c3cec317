import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { generate } from '../../lib/start/generate.mjs'

/** Node built-ins only: it runs before anything is installed, and installs what the bench alone needs. */
const here = dirname(fileURLToPath(import.meta.url))
const root = join(here, '../..')
const benches = {
  authority: 'authority.mjs',
  decision: 'decision.ts',
  growth: 'growth.ts',
  start: 'start.ts',
  snapshot: 'snapshot.ts',
  journal: 'journal.ts',
  pages: 'pages.ts',
  sheets: 'sheets.ts',
}

const names = process.argv.slice(2)
const unknown = names.filter((name) => !Object.hasOwn(benches, name))
if (unknown.length > 0) {
  console.error(`no bench is named ${unknown.join(', ')}; there are ${Object.keys(benches).join(', ')}`)
  process.exitCode = 2
} else {
  const isReady = installed(root, 'tsx') && installed(here, 'json-rules-engine')
  if (!isReady || !(await isGenerated())) process.exitCode = 1
  else for (const name of names.length > 0 ? names : Object.keys(benches)) bench(benches[name])
}

/** Installs the packages of a folder where one that it needs is missing; says whether they are there. */
function installed(folder, needed) {
  if (existsSync(join(folder, 'node_modules', needed))) return true
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], {
    cwd: folder,
    stdio: ['ignore', process.stderr, 'inherit'],
    shell: process.platform === 'win32',
  })
  if (status !== 0) console.error(`npm ci failed in ${folder}`)
  return status === 0
}

/** Writes the database client, where that has not been done. */
async function isGenerated() {
  const { ok, output } = await generate(root)
  if (!ok) console.error(output)
  return ok
}

/** Each bench has a process of its own. */
function bench(file) {
  const args = ['--expose-gc', '--import', 'tsx', join(here, file)]
  const { status } = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit' })
  if (status !== 0) process.exitCode = 1
}
