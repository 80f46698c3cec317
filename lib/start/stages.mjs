import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { countTests, longestFiles } from './count.mjs'
import { runCommand } from './run-command.mjs'

/**
 * @typedef {{ name: string, ok: boolean, seconds: number, note: string, output: string }} StageResult
 * @typedef {{ name: string, commands: string[][] }} Gate
 */

/** The static gates, the longest first; each command is a script for node and its arguments. */
export const gates = [
  { name: 'lint', commands: [['node_modules/eslint/bin/eslint.js', '.', '--max-warnings', '0']] },
  {
    name: 'types',
    commands: [
      ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.json'],
      ['node_modules/typescript/bin/tsc', '-p', 'tsconfig.core.json'],
    ],
  },
  { name: 'format', commands: [['node_modules/prettier/bin/prettier.cjs', '--check', '.']] },
  { name: 'layers', commands: [['lib/start/layers.mjs']] },
  { name: 'spec', commands: [['lib/start/spec-coverage.mjs']] },
]

/** Gates whose last line is a count that is worth showing. */
const COUNTING = new Set(['layers', 'spec'])

/**
 * Installs what package-lock.json names, where that has not been done since it changed.
 * @param {string} root
 * @returns {Promise<StageResult>}
 */
export async function install(root) {
  const done = join(root, 'node_modules/.package-lock.json')
  const current =
    existsSync(done) && statSync(done).mtimeMs >= statSync(join(root, 'package-lock.json')).mtimeMs
  if (current) return { name: 'install', ok: true, seconds: 0, note: 'nothing to do', output: '' }
  const npm = process.env['npm_execpath']
  const args = ['ci', '--include=dev', '--include=optional', '--no-audit', '--no-fund']
  const ended = npm?.endsWith('.js')
    ? await runCommand(process.execPath, [npm, ...args], { cwd: root })
    : await runCommand('npm', args, { cwd: root })
  return { name: 'install', ok: ended.code === 0, seconds: ended.seconds, note: '', output: ended.output }
}

/**
 * Runs a static gate, all of its commands also where one fails.
 * @param {Gate} gate
 * @param {string} root
 * @returns {Promise<StageResult>}
 */
export async function runGate(gate, root) {
  const result = { name: gate.name, ok: true, seconds: 0, note: '', output: '' }
  for (const command of gate.commands) {
    const ended = await runCommand(process.execPath, command, { cwd: root })
    result.ok &&= ended.code === 0
    result.seconds += ended.seconds
    result.output += ended.output
    if (COUNTING.has(gate.name)) result.note = ended.stdout.trimEnd().split('\n').at(-1) ?? ''
  }
  return result
}

/**
 * Runs vitest and counts.
 * @param {string} root
 * @returns {Promise<StageResult & { passed: number, failed: number, figures: string }>}
 */
export async function runTests(root) {
  const folder = mkdtempSync(join(tmpdir(), 'kerfbook-tests-'))
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
  const reportFile = join(folder, 'report.json')
  const figuresFile = join(folder, 'figures.txt')
  const args = ['node_modules/vitest/vitest.mjs', 'run', '--allowOnly=false', '--reporter=dot']
  const ended = await runCommand(
    process.execPath,
    [...args, '--reporter=json', `--outputFile=${reportFile}`],
    {
      cwd: root,
      env: { KERFBOOK_FIGURES: figuresFile },
    },
  )
  const report = existsSync(reportFile) ? JSON.parse(readFileSync(reportFile, 'utf8')) : undefined
  const count = countTests(report, root.replace(/\/$/, ''))
  if (ended.code !== 0 && count.failed === 0) {
    count.failed = 1
    count.failures.push({ file: 'vitest', title: 'the run as a whole', message: `exit code ${ended.code}` })
  }
  const readable = count.failures.map(
    ({ file, title, message }) => `${file}\n  ${title}\n${shorten(message)}\n`,
  )
  // What vitest itself says is wanted only where no test explains the failure.
  if (count.failures.some(({ file, title }) => file === 'vitest' || title === 'the file as a whole')) {
    readable.push(ended.output)
  }
  return {
    name: 'tests',
    ok: count.failed === 0,
    seconds: ended.seconds,
    note: `${count.passed} passed, ${count.failed} failed`,
    output: readable.join('\n'),
    passed: count.passed,
    failed: count.failed,
    figures: `${existsSync(figuresFile) ? readFileSync(figuresFile, 'utf8') : ''}${longestFiles(report, root.replace(/\/$/, ''))}\n`,
  }
}

/** @param {string} message a failure without the part of its stack that lies in packages, indented */
function shorten(message) {
  return message
    .split('\n')
    .filter((line) => !/^\s+at .*(node_modules|node:)/.test(line))
    .slice(0, 60)
    .map((line) => `    ${line}`)
    .join('\n')
}
