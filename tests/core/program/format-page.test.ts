import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { sectionSchemas } from '../../../lib/core/program/program.schema.ts'
import { SECTION_NAMES } from '../../../lib/core/program/sections.ts'
import { example, problemsOf, type Raw } from './small-program.ts'

const PAGE = readFileSync(new URL('../../../lib/core/program/PROGRAM-FILE.md', import.meta.url), 'utf8')
const VERSION_KEYS = ['id', 'recordedIn', 'supersededIn', 'supersedes']

/** What the page says of one section: its rows of key, what it holds and whether it is required; and its record. */
function onPage(section: string): { rows: { key: string; holds: string; required: string }[]; record: Raw } {
  const text = PAGE.split(`\n### \`${section}\`\n`)[1]?.split('\n### ')[0] ?? ''
  const rows = [...text.matchAll(/^\| `(\w+)` +\| (.*?) +\| (yes|no) +\|$/gm)].map(
    ([, key = '', holds = '', required = '']) => ({ key, holds, required }),
  )
  const json = /```json\n([\s\S]*?)\n```/.exec(text)?.[1] ?? 'null'
  return { rows, record: JSON.parse(json) as Raw }
}

/** The words that a field allows, where it allows words only. */
function wordsOf(field: unknown): string[] {
  if (field instanceof z.ZodExactOptional) return wordsOf(field.unwrap())
  if (field instanceof z.ZodArray) return wordsOf(field.element)
  if (field instanceof z.ZodUnion) return field.options.flatMap(wordsOf)
  if (field instanceof z.ZodLiteral) return [...field.values].map(String)
  return field instanceof z.ZodEnum ? field.options.map(String) : []
}

describe('the page of the format', () => {
  it.each(SECTION_NAMES)('[PR24] shows a record of %s that reads, with every key', (section) => {
    const { record } = onPage(section)
    expect(sectionSchemas[section].safeParse(record)).toMatchObject({ success: true })
    // A card says its decision or from where it was carried in; the page shows the longer one.
    const shown = [...Object.keys(record), ...VERSION_KEYS, ...(section === 'cards' ? ['decision'] : [])]
    // A person's birth date and "of age from" are told one or the other.
    const all = section === 'people' ? [...shown, 'birthDate'] : shown
    const optional = section === 'editions' ? ['lastDay', 'successor'] : []
    expect(new Set([...all, ...optional])).toEqual(new Set(Object.keys(sectionSchemas[section].shape)))
  })

  it.each(SECTION_NAMES)(
    '[PR24] names the keys of %s, the required ones and the words allowed',
    (section) => {
      const told = onPage(section).rows
      const fields = Object.entries(sectionSchemas[section].shape as Record<string, z.ZodType>).filter(
        ([key]) => !VERSION_KEYS.includes(key),
      )
      expect(Object.fromEntries(told.map(({ key, required }) => [key, required]))).toEqual(
        Object.fromEntries(
          fields.map(([key, field]) => [key, field instanceof z.ZodExactOptional ? 'no' : 'yes']),
        ),
      )
      for (const { key, holds } of told) {
        const words = wordsOf(fields.find(([name]) => name === key)?.[1])
        for (const word of words) expect(holds).toMatch(new RegExp(`\`"?${word}"?\``))
      }
    },
  )

  it('[PR24] the script that adopts a book prints facts that make a good program', () => {
    const script = new URL('../../../seeds/adopt-book.ts', import.meta.url).pathname
    const command = ['--import', 'tsx', script, 'federal-crosscut', '1']
    const adopted = JSON.parse(execFileSync(process.execPath, command, { encoding: 'utf8' })) as Raw
    const { format, draft, program, entries } = example()
    expect(Object.keys(adopted)).toEqual(['books', 'editions', 'extensions', 'cautions'])
    expect(problemsOf({ format, draft, program, entries, ...adopted })).toEqual([])
  })
})
