import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import formats from 'ajv-formats'
import { beforeAll, describe, expect, it } from 'vitest'
import { programJsonSchema } from '../../../lib/core/program/json-schema.schema.ts'
import { example, fact, section, type Raw } from './small-program.ts'

const SHIPPED = new URL('../../../seeds/kerfbook-program-1.schema.json', import.meta.url)

describe('the JSON Schema of program files', () => {
  let isValid: (file: unknown) => boolean

  beforeAll(() => {
    const ajv = new Ajv2020({ strict: true, allowUnionTypes: true })
    // The package is CommonJS, and its default export is the function itself at run time.
    const addFormats = formats as unknown as (ajv: Ajv2020) => void
    addFormats(ajv)
    isValid = ajv.compile(JSON.parse(readFileSync(SHIPPED, 'utf8')) as object)
  })

  it('[PR20] the file that ships is the one that the schemas make', () => {
    expect(readFileSync(SHIPPED, 'utf8')).toBe(`${JSON.stringify(programJsonSchema(), null, 2)}\n`)
  })

  it('[PR20] an independent reader accepts the example', () => {
    expect(isValid(example())).toBe(true)
  })

  it.each<[string, (file: Raw) => unknown]>([
    ['an unknown key', (file) => (fact(file, 'people', 'tomo')['shoeSize'] = 43)],
    ['a missing key', (file) => delete fact(file, 'people', 'tomo')['name']],
    ['an unknown section', (file) => (file['saws'] = [])],
    ['an empty name', (file) => (fact(file, 'people', 'tomo')['name'] = '')],
    ['a day that does not exist', (file) => (fact(file, 'people', 'tomo')['birthDate'] = '1991-02-30')],
    ['the year 9999', (file) => (fact(file, 'people', 'tomo')['birthDate'] = '9999-01-01')],
    ['a moment without a zone', (file) => (section(file, 'entries')[0]!['statedAt'] = '2026-03-02T16:00:00')],
    ['a third of an inch', (file) => (fact(file, 'items', 'kettle-log-1')['diameter'] = 22.33)],
    ['no inches at all', (file) => (fact(file, 'items', 'kettle-log-1')['diameter'] = 0)],
    ['another format', (file) => (file['format'] = 'kerfbook-program/2')],
    ['a level nobody knows how to write', (file) => (fact(file, 'cards', 'tomo-card')['level'] = 'B!')],
  ])('[PR20] it refuses %s', (_name, change) => {
    const file = example()
    change(file)
    expect(isValid(file)).toBe(false)
  })
})
