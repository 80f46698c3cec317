import { readSources, openingIds, specLines } from '../../lib/start/spec-coverage.mjs'
import { testTitles } from '../../lib/start/test-titles.mjs'
import { byText, sortedTexts } from '../../lib/core/kernel/order.ts'
import { shippedBooks } from '../builders/shipped-books.ts'
import { CHANGE_KINDS, FINDING_KINDS, NOTE_KINDS } from './kinds.ts'

/** Every SPEC line, rule id and kind with the tests that name it: one page, made and never written by hand. */
export function registryPage(root: string): string {
  const { specs, tests } = readSources(root)
  const filesOf = new Map<string, string[]>()
  for (const test of tests)
    for (const { title } of testTitles(test.text))
      for (const id of openingIds(title ?? '')) filesOf.set(id, [...(filesOf.get(id) ?? []), test.path])
  const naming = (word: string) =>
    tests
      .filter(({ text }) => text.includes(`'${word}'`) || text.includes(`| ${word} |`))
      .map(({ path }) => path)
  const lines = specs.flatMap((spec) =>
    specLines(spec).lines.map(({ id, path }) => row(id, path, filesOf.get(id) ?? [])),
  )
  const rules = shippedBooks().editions.flatMap(({ id: edition, rules: all }) =>
    all.map((rule) => row(rule.id, `${edition}, ${rule.kind}, ${rule.mark}`, naming(rule.id))),
  )
  const kinds = (named: object) => Object.keys(named).map((kind) => row(kind, '', naming(kind)))
  return [
    '# What there is, and what tests it',
    '',
    'Made by `npm run -s registry`; a test fails when it is stale. A rule without a file of its own is tested as data:',
    'its figures against its source, its shape against the schema.',
    '',
    table('SPEC lines', 'line', 'where', lines),
    table('Rules of the shipped books', 'rule', 'edition, kind, mark', rules),
    table('Findings', 'kind', '', kinds(FINDING_KINDS)),
    table('Notes', 'kind', '', kinds(NOTE_KINDS)),
    table('Changes', 'kind', '', kinds(CHANGE_KINDS)),
  ].join('\n')
}

type Row = { name: string; where: string; files: readonly string[] }

function row(name: string, where: string, files: readonly string[]): Row {
  return { name, where, files: sortedTexts(files) }
}

function table(heading: string, name: string, where: string, rows: readonly Row[]): string {
  const sorted = [...rows].sort(
    (left, right) => byText(left.where, right.where) || natural(left.name, right.name),
  )
  const cells = sorted.map((one) => `| ${one.name} | ${one.where} | ${one.files.map(shortened).join(', ')} |`)
  return [
    `## ${heading}: ${rows.length}`,
    '',
    `| ${name} | ${where} | tests |`,
    '| --- | --- | --- |',
    ...cells,
    '',
  ].join('\n')
}

function natural(left: string, right: string): number {
  return left.localeCompare(right, 'en', { numeric: true })
}

function shortened(path: string): string {
  return path.replace(/^tests\//, '').replace(/\.test\.ts$/, '')
}
