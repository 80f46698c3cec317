/**
 * @typedef {{ title: string | undefined, line: number }} TestTitle title is nothing where the first argument is
 * not a quoted text
 */

/** What may stand between `it` and its title; those that are called first take arguments of their own. */
const CALLED_FIRST = new Set(['each', 'for', 'skipIf', 'runIf', 'extend'])
const BEFORE_A_REGEX = new Set([
  'return',
  'typeof',
  'case',
  'of',
  'in',
  'do',
  'else',
  'void',
  'await',
  'yield',
])

/**
 * The titles of the tests in a source text: the quoted first argument of `it(...)` and `test(...)` with their
 * modifiers, `it.each(rows)('...')` and `it.each` followed by a template included. Comments, texts and regular
 * expressions are passed over.
 * @param {string} source
 * @returns {TestTitle[]}
 */
export function testTitles(source) {
  /** @type {TestTitle[]} */
  const titles = []
  let at = 0
  let before = ''
  while (at < source.length) {
    const word = wordAt(source, at)
    if (word !== '') {
      const called =
        (word === 'it' || word === 'test') && before !== '.' ? titlePlace(source, at + word.length) : -1
      if (called >= 0) titles.push({ title: quotedAt(source, called), line: lineOf(source, at) })
      before = word
      at += word.length
      continue
    }
    const end = tokenEnd(source, at, before)
    const token = source.slice(at, end)
    if (!isBlank(token)) before = token
    at = end
  }
  return titles
}

/**
 * Where the first argument of a test call begins, or -1 where it is no call.
 * @param {string} source
 * @param {number} start just behind `it` or `test`
 */
function titlePlace(source, start) {
  let at = skipBlank(source, start)
  let callsFirst = false
  while (source[at] === '.') {
    at = skipBlank(source, at + 1)
    const name = wordAt(source, at)
    callsFirst = CALLED_FIRST.has(name)
    at = skipTypes(source, skipBlank(source, at + name.length))
    if (callsFirst && (source[at] === '(' || source[at] === '`')) {
      at = skipBlank(source, groupEnd(source, at))
      callsFirst = false
    }
  }
  at = skipTypes(source, at)
  return source[at] === '(' && !callsFirst ? skipBlank(source, at + 1) : -1
}

/**
 * Type arguments, as in `it.each<Row>(rows)`.
 * @param {string} source
 * @param {number} start
 */
function skipTypes(source, start) {
  if (source[start] !== '<') return start
  let depth = 0
  let at = start
  while (at < source.length) {
    const end = tokenEnd(source, at, '(')
    if (source[at] === '<') depth += 1
    if (source[at] === '>' && source[at - 1] !== '=') depth -= 1
    at = end
    if (depth === 0) break
  }
  return skipBlank(source, at)
}

/**
 * @param {string} source
 * @param {number} start
 * @returns {string | undefined}
 */
function quotedAt(source, start) {
  const quote = source[start]
  if (quote !== "'" && quote !== '"' && quote !== '`') return undefined
  return source.slice(start + 1, tokenEnd(source, start, '(') - 1).replace(/\\(['"`\\])/g, '$1')
}

/**
 * The end of the token at a place: a comment, a text, a template, a regular expression, a word, or one letter.
 * @param {string} source
 * @param {number} at
 * @param {string} before the token before it, which tells a regular expression from a division
 * @returns {number}
 */
function tokenEnd(source, at, before) {
  const letter = source[at]
  const word = wordAt(source, at)
  if (word !== '') return at + word.length
  if (source.startsWith('//', at)) return endOr(source, source.indexOf('\n', at))
  if (source.startsWith('/*', at)) return endOr(source, source.indexOf('*/', at + 2), 2)
  if (letter === "'" || letter === '"') return textEnd(source, at)
  if (letter === '`') return groupEnd(source, at)
  if (letter === '/' && mayBeRegex(before)) return regexEnd(source, at)
  return at + 1
}

/** @param {string} before */
function mayBeRegex(before) {
  return before === '' || BEFORE_A_REGEX.has(before) || /^[(,=:[!&|?{};+\-*%<>~^]$/.test(before)
}

/**
 * The end of a group in round or curly brackets, or of a template with its insertions.
 * @param {string} source
 * @param {number} start
 * @returns {number}
 */
function groupEnd(source, start) {
  let at = start + 1
  if (source[start] === '`') {
    while (at < source.length && source[at] !== '`') {
      if (source[at] === '\\') at += 2
      else at = source.startsWith('${', at) ? groupEnd(source, at + 1) : at + 1
    }
    return at + 1
  }
  const open = source[start]
  const close = open === '(' ? ')' : '}'
  let depth = 1
  let before = '('
  while (at < source.length) {
    const end = tokenEnd(source, at, before)
    const token = source.slice(at, end)
    if (token === open) depth += 1
    if (token === close) depth -= 1
    at = end
    if (depth === 0) break
    if (!isBlank(token)) before = token
  }
  return at
}

/** @param {string} source @param {number} start */
function textEnd(source, start) {
  let at = start + 1
  while (at < source.length && source[at] !== source[start] && source[at] !== '\n') {
    at += source[at] === '\\' ? 2 : 1
  }
  return at + 1
}

/** @param {string} source @param {number} start */
function regexEnd(source, start) {
  let inClass = false
  for (let at = start + 1; at < source.length && source[at] !== '\n'; at += 1) {
    if (source[at] === '\\') at += 1
    else if (source[at] === '[') inClass = true
    else if (source[at] === ']') inClass = false
    else if (source[at] === '/' && !inClass) return at + 1
  }
  return start + 1
}

/** @param {string} source @param {number} start */
function skipBlank(source, start) {
  let at = start
  while (at < source.length && isBlank(source.slice(at, tokenEnd(source, at, '/'))))
    at = tokenEnd(source, at, '/')
  return at
}

/** @param {string} token */
function isBlank(token) {
  return token.trim() === '' || token.startsWith('//') || token.startsWith('/*')
}

/** @param {string} source @param {number} at */
function wordAt(source, at) {
  const pattern = /[\p{L}\p{N}_$]+/uy
  pattern.lastIndex = at
  return pattern.exec(source)?.[0] ?? ''
}

/** @param {string} source @param {number} found @param {number} [length] */
function endOr(source, found, length = 0) {
  return found < 0 ? source.length : found + length
}

/** @param {string} source @param {number} at */
function lineOf(source, at) {
  return source.slice(0, at).split('\n').length
}
