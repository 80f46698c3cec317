import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { innocent, planted, targets } from './planted-violations.mjs'
import { endRunning, runCommand } from './run-command.mjs'

/**
 * @typedef {{ from: string, to: string, rule: { name: string } }} Violation
 * @typedef {{ modules: { source: string }[], summary: { violations: Violation[] } }} Cruise
 */

const root = fileURLToPath(new URL('../..', import.meta.url))
const grounds = ['lib', 'app', 'tests', 'seeds']
const config = '.dependency-cruiser.cjs'

/**
 * Cruises the floors below a folder.
 * @param {string} folder
 * @returns {Promise<Cruise>}
 */
async function cruise(folder) {
  const present = grounds.filter((ground) => existsSync(join(folder, ground)))
  const cruiser = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs')
  const args = [cruiser, '--config', config, '--output-type', 'json', ...present]
  const { stdout, output } = await runCommand(process.execPath, args, { cwd: folder })
  try {
    return JSON.parse(stdout)
  } catch {
    throw new Error(`dependency-cruiser gave no report:\n${output.slice(0, 4000)}`)
  }
}

/** The rules of the house hold, and every file of the house was looked at. */
async function cruiseTheHouse() {
  const { modules, summary } = await cruise(root)
  const problems = summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)
  const cruised = new Set(modules.map((module) => module.source))
  const own = [...cruised].filter((source) => grounds.some((ground) => source.startsWith(`${ground}/`)))
  if (own.length === 0) problems.push('not one module was cruised')
  for (const file of sourcesUnder(root)) {
    if (!cruised.has(file) && existsSync(join(root, file))) problems.push(`${file} was not cruised`)
  }
  return { count: own.length, problems }
}

/**
 * Every rule finds the violation planted for it. They are planted in a copy of the house under the temporary
 * folder, so that type check and lint, which run at the same time, never see them.
 */
async function cruiseThePlanted() {
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-layers-'))
  const clear = () => rmSync(folder, { recursive: true, force: true })
  process.once('exit', clear)
  for (const file of [config, 'tsconfig.json', 'package.json']) cpSync(join(root, file), join(folder, file))
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'), 'junction')
  const files = Object.entries(targets).concat(
    [...planted, ...innocent].map(({ file, text }) => [file, text]),
  )
  for (const [file, text] of files) {
    mkdirSync(dirname(join(folder, file)), { recursive: true })
    writeFileSync(join(folder, file), text)
  }
  const { summary } = await cruise(folder)
  clear()
  const problems = planted
    .filter(
      ({ rule, file }) =>
        !summary.violations.some((found) => found.rule.name === rule && found.from === file),
    )
    .map(({ rule, file }) => `the violation of ${rule} planted in ${file} was not found`)
  const names = new Set(planted.map(({ rule }) => rule))
  for (const rule of createRequire(import.meta.url)(join(root, config)).forbidden) {
    if (!names.has(rule.name)) problems.push(`the rule ${rule.name} has no planted violation`)
  }
  for (const { file } of innocent) {
    const blamed = summary.violations.find(({ from }) => from === file)
    if (blamed !== undefined) problems.push(`${file} breaks nothing and is blamed for ${blamed.rule.name}`)
  }
  return { count: planted.length, problems }
}

/** @param {string} folder @returns {string[]} TypeScript files, relative, the bench with its own packages apart */
function sourcesUnder(folder) {
  return grounds
    .map((ground) => join(folder, ground))
    .filter(existsSync)
    .flatMap((ground) =>
      readdirSync(ground, { recursive: true, encoding: 'utf8' }).map((name) => join(ground, name)),
    )
    .map((path) => relative(folder, path).replaceAll('\\', '/'))
    .filter((path) => /\.(ts|tsx)$/.test(path) && !path.endsWith('.d.ts'))
    .filter((path) => !path.includes('node_modules/') && !path.startsWith('lib/store/generated/'))
}

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.once(signal, () => {
    endRunning()
    process.exit(1)
  })
}
const house = await cruiseTheHouse()
const proof = await cruiseThePlanted()
for (const problem of [...house.problems, ...proof.problems]) console.log(problem)
console.log(`${house.count} modules cruised, ${proof.count} violations planted`)
process.exitCode = house.problems.length + proof.problems.length === 0 ? 0 : 1
