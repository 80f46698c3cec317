import { writeFileSync } from 'node:fs'
import { answerJsonSchema } from '../lib/core/authority/answer.schema.ts'

// Writes the JSON Schema of answers anew; a test asserts that the file that ships is this one.
const target = new URL('./kerfbook-answer-1.schema.json', import.meta.url)
writeFileSync(target, `${JSON.stringify(answerJsonSchema(), null, 2)}\n`)
