import { writeFileSync } from 'node:fs'
import { programJsonSchema } from '../lib/core/program/json-schema.schema.ts'

// Writes the JSON Schema of program files anew; a test asserts that the file that ships is this one.
const target = new URL('./kerfbook-program-1.schema.json', import.meta.url)
writeFileSync(target, `${JSON.stringify(programJsonSchema(), null, 2)}\n`)
