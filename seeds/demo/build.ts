import { writeFileSync } from 'node:fs'
import { readProgram } from '../../lib/core/program/read-program.ts'
import { writeProgram } from '../../lib/core/program/write-program.ts'
import { demoProgram } from './demo-program.ts'

// Writes seeds/demo.json. Nothing is written that would be refused when read.
const text = writeProgram(demoProgram())
const read = readProgram(text)
if (read.ok) {
  writeFileSync(new URL('../demo.json', import.meta.url), text)
} else {
  console.error(JSON.stringify(read.problem, null, 2))
  process.exitCode = 1
}
