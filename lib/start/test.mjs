// `npm test`: on a bare clone it installs, then runs every gate and every test and counts them.
// `npm test -- NAME` runs one stage; `--long` gives the properties more cases. Node built-ins only.
import { fileURLToPath } from 'node:url'
import { closingLine, total } from './count.mjs'
import { generate } from './generate.mjs'
import { endRunning } from './run-command.mjs'
import { gates, install, runGate, runTests } from './stages.mjs'

/** @typedef {import('./stages.mjs').StageResult} StageResult */

const root = fileURLToPath(new URL('../..', import.meta.url))
const AT_ONCE = 2
const names = [...gates.map((gate) => gate.name), 'tests']

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.once(signal, () => {
    endRunning()
    process.exit(1)
  })
}
process.exitCode = await main(process.argv.slice(2))

/** @param {readonly string[]} args */
async function main(args) {
  const wanted = args.filter((arg) => arg !== '--long')
  const unknown = wanted.find((name) => !names.includes(name))
  if (unknown !== undefined) {
    console.error(`There is no stage ${unknown}. The stages are: ${names.join(', ')}.`)
    return 2
  }
  if (Number(process.versions.node.split('.')[0]) < 20) {
    console.error(`Kerfbook needs Node 20 or newer; this is ${process.version}.`)
    return 2
  }
  if (args.includes('--long')) process.env['KERFBOOK_LONG'] = '1'
  const runs = (/** @type {string} */ name) => wanted.length === 0 || wanted.includes(name)

  const installed = await install(root)
  print(installed)
  if (!installed.ok) return close([installed], { passed: 0, failed: 0 })
  const generated = await generate(root)
  print(generated)
  if (!generated.ok) return close([generated], { passed: 0, failed: 0 })

  const results = await runGates(gates.filter((gate) => runs(gate.name)))
  let tests = { passed: 0, failed: 0 }
  if (runs('tests')) {
    const ended = await runTests(root)
    print(ended)
    if (ended.figures !== '') console.log(`\n${ended.figures.trimEnd()}`)
    tests = ended
  }
  return close(results, tests)
}

/**
 * Runs the gates, two at a time, and prints each as it ends.
 * @param {typeof gates} waiting
 */
async function runGates(waiting) {
  const queue = [...waiting]
  /** @type {StageResult[]} */
  const results = []
  const work = async () => {
    for (let gate = queue.shift(); gate !== undefined; gate = queue.shift()) {
      const result = await runGate(gate, root)
      print(result)
      results.push(result)
    }
  }
  await Promise.all(Array.from({ length: AT_ONCE }, work))
  return results
}

/** @param {StageResult} result */
function print({ name, ok, seconds, note, output }) {
  console.log(
    `${name.padEnd(8)} ${ok ? 'ok    ' : 'failed'} ${seconds.toFixed(1).padStart(6)} s  ${note}`.trimEnd(),
  )
  if (!ok) console.log(`\n${output.trimEnd()}\n`)
}

/**
 * @param {readonly StageResult[]} results
 * @param {{ passed: number, failed: number }} tests
 */
function close(results, tests) {
  const sum = total(results, tests)
  console.log(`\n${closingLine(sum)}`)
  return sum.failed === 0 ? 0 : 1
}
