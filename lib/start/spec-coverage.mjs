import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { testTitles } from './test-titles.mjs'

/**
 * @typedef {{ path: string, text: string }} Source
 * @typedef {{ id: string, path: string, line: number }} SpecLine
 * @typedef {{ rooms: number, lines: number, tests: number, problems: string[] }} Coverage
 */

const SPEC_LINE = /^- \[([A-Z]+[0-9]+)\] \S/
const MEANT_AS_SPEC_LINE = /^\s*[-*+]\s*\[\s*[A-Za-z]+\s*[0-9]+[a-z]?\s*\](?!\()/
const OPENING_IDS = /^((?:\[[A-Z]+[0-9]+\]\s*)+)/
/** Outside the core a title may open with an expectation `[E12]` or a promise `[P7]`, kept in the issues. */
const OUTSIDE_SPEC = /^[EP][0-9]+$/
/** Here every title opens with the id of a SPEC line. */
const UNDER_SPEC = /^tests\/core\//

/**
 * The numbered lines of a SPEC.md, and lines that look like one and are none.
 * @param {Source} spec
 * @returns {{ lines: SpecLine[], problems: string[] }}
 */
export function specLines(spec) {
  /** @type {SpecLine[]} */
  const lines = []
  /** @type {string[]} */
  const problems = []
  for (const [index, text] of spec.text.split('\n').entries()) {
    const id = SPEC_LINE.exec(text)?.[1]
    const place = `${spec.path}:${index + 1}`
    if (id === undefined) {
      if (MEANT_AS_SPEC_LINE.test(text))
        problems.push(`${place} is not of the form "- [AU4] a sentence": ${text}`)
    } else if (OUTSIDE_SPEC.test(id)) {
      problems.push(`${place} [${id}]: E and P alone are kept for expectations and promises`)
    } else lines.push({ id, path: spec.path, line: index + 1 })
  }
  if (lines.length === 0) problems.push(`${spec.path} has no line of the form "- [AU4] a sentence"`)
  return { lines, problems }
}

/**
 * The ids that a title opens with.
 * @param {string} title
 * @returns {string[]}
 */
export function openingIds(title) {
  const opening = OPENING_IDS.exec(title)?.[1] ?? ''
  return [...opening.matchAll(/\[([A-Z]+[0-9]+)\]/g)].map((match) => match[1] ?? '')
}

/**
 * Compares the lines of the specifications with the titles of the tests.
 * @param {readonly Source[]} specs
 * @param {readonly Source[]} tests
 * @param {readonly string[]} [roomsWithoutSpec] core rooms that hold code and no SPEC.md
 * @returns {Coverage}
 */
export function specCoverage(specs, tests, roomsWithoutSpec = []) {
  const problems = roomsWithoutSpec.map((room) => `${room} holds code and has no SPEC.md`)
  /** @type {Map<string, SpecLine>} */
  const known = new Map()
  for (const spec of specs) {
    const read = specLines(spec)
    problems.push(...read.problems)
    for (const line of read.lines) {
      const first = known.get(line.id)
      if (first === undefined) known.set(line.id, line)
      else
        problems.push(`${line.path}:${line.line} [${line.id}] stands already at ${first.path}:${first.line}`)
    }
  }

  /** @type {Set<string>} */
  const tested = new Set()
  let count = 0
  for (const file of tests) {
    for (const { title, line } of testTitles(file.text)) {
      const place = `${file.path}:${line}`
      const ids = title === undefined ? [] : openingIds(title)
      count += 1
      if (ids.length === 0 && UNDER_SPEC.test(file.path)) {
        problems.push(
          title === undefined
            ? `${place} has a title that is not a quoted text, so its id cannot be read`
            : `${place} opens with no id: ${title}`,
        )
      }
      for (const id of ids) {
        tested.add(id)
        const elsewhere = OUTSIDE_SPEC.test(id) && !UNDER_SPEC.test(file.path)
        if (!known.has(id) && !elsewhere) problems.push(`${place} names [${id}], which no SPEC.md has`)
      }
    }
  }
  for (const line of known.values()) {
    if (!tested.has(line.id)) problems.push(`${line.path}:${line.line} [${line.id}] has no test`)
  }
  if (known.size === 0) problems.push('not one SPEC line was found')
  return { rooms: specs.length, lines: known.size, tests: count, problems }
}

/**
 * Reads a working copy: the specifications, the tests, and the core rooms that hold code without a SPEC.md.
 * @param {string} root
 */
export function readSources(root) {
  const core = join(root, 'lib/core')
  const rooms = existsSync(core) ? folders(core).map((name) => join(core, name)) : []
  const places = [...rooms, join(root, 'lib/wording'), join(root, 'lib/cli')].filter(existsSync)
  /** @param {string} path */
  const read = (path) => ({
    path: relative(root, path).split(sep).join('/'),
    text: readFileSync(path, 'utf8'),
  })
  const holdsSpec = (/** @type {string} */ place) => existsSync(join(place, 'SPEC.md'))
  return {
    specs: places.filter(holdsSpec).map((place) => read(join(place, 'SPEC.md'))),
    tests: filesUnder(join(root, 'tests'))
      .filter((path) => path.endsWith('.test.ts'))
      .map(read),
    roomsWithoutSpec: rooms
      .filter((room) => !holdsSpec(room) && filesUnder(room).some((path) => path.endsWith('.ts')))
      .map((room) => relative(root, room).split(sep).join('/')),
  }
}

/** @param {string} folder */
function folders(folder) {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
}

/** @param {string} folder @returns {string[]} */
function filesUnder(folder) {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.name !== 'node_modules')
    .flatMap((entry) =>
      entry.isDirectory() ? filesUnder(join(folder, entry.name)) : [join(folder, entry.name)],
    )
    .sort()
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const root = process.argv[2] ?? fileURLToPath(new URL('../..', import.meta.url))
  const { specs, tests, roomsWithoutSpec } = readSources(root)
  const coverage = specCoverage(specs, tests, roomsWithoutSpec)
  for (const problem of coverage.problems) console.log(problem)
  console.log(`${coverage.rooms} rooms, ${coverage.lines} lines, ${coverage.tests} titles in tests`)
  process.exitCode = coverage.problems.length === 0 ? 0 : 1
}
