import { execFile } from 'node:child_process'
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { CHANGES, type PlantedChange } from './changes.ts'

/** What has to say no: the checks of the core and those against the outside. */
const CHECKS = ['tests/core', 'tests/published', 'tests/properties/pinned.test.ts']
const HOUSE = ['lib', 'seeds', 'tests', 'package.json', 'tsconfig.json', 'vitest.config.ts']

// Words after the command narrow the list to the rules that hold them: npm run test:planted -- "of several".
const words = process.argv.slice(2).join(' ')
const planted = CHANGES.filter(({ rule }) => rule.includes(words))

const copy = mkdtempSync(join(tmpdir(), 'kerfbook-planted-'))
process.on('exit', () => {
  rmSync(copy, { recursive: true, force: true })
})
for (const part of HOUSE)
  cpSync(part, join(copy, part), { recursive: true, filter: (path) => !path.includes('node_modules') })
symlinkSync(join(process.cwd(), 'node_modules'), join(copy, 'node_modules'))

/** Whether the checks pass on the copy as it is; they stop at the first no. */
function checksPass(): Promise<boolean> {
  return new Promise((resolve) => {
    const vitest = ['node_modules/vitest/vitest.mjs', 'run', '--bail=1', '--reporter=dot', ...CHECKS]
    execFile(process.execPath, vitest, { cwd: copy, maxBuffer: 1 << 26 }, (fault) => {
      resolve(fault === null)
    })
  })
}

async function isCaught({ file, from, to }: PlantedChange): Promise<boolean> {
  const path = join(copy, file)
  const text = readFileSync(path, 'utf8')
  if (text.split(from).length !== 2) throw new Error(`${file} does not hold once: ${from}`)
  writeFileSync(
    path,
    text.replace(from, () => to),
  )
  const passed = await checksPass()
  writeFileSync(path, text)
  return !passed
}

if (!(await checksPass())) {
  console.log('The checks fail before anything is planted.')
  process.exit(1)
}
let caught = 0
for (const change of planted) {
  const isSo = await isCaught(change)
  if (isSo) caught += 1
  console.log(`${isSo ? 'caught ' : 'MISSED '} ${change.rule}`)
}
console.log(`${planted.length} changes planted, ${caught} caught`)
process.exitCode = planted.length > 0 && caught === planted.length ? 0 : 1
