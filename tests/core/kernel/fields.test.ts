import { describe, expect, it } from 'vitest'
import { idField, nameField, textField } from '../../../lib/core/kernel/fields.schema.ts'
import { InvariantBroken, refusal, success } from '../../../lib/core/kernel/result.ts'
import { entryNumber } from '../../../lib/core/kernel/versions.schema.ts'
import { isKnownAt } from '../../../lib/core/kernel/versions.ts'

type Field = {
  safeParse: (value: unknown) => { success: boolean; error?: { issues: { message: string }[] } }
}

function messages(field: Field, value: unknown): string[] {
  return field.safeParse(value).error?.issues.map((issue) => issue.message) ?? []
}

describe('versions', () => {
  const corrected = { id: 'card-1', recordedIn: 12, supersededIn: 15 }

  it.each([
    ['the entry before', 11, false],
    ['its own entry', 12, true],
    ['the entry before its correction', 14, true],
    ['the entry of its correction', 15, false],
    ['later', 99, false],
  ])('[KE7] corrected, as known at %s', (_name, n, isKnown) => {
    expect(isKnownAt(corrected, n)).toBe(isKnown)
  })

  it('[KE7] what was never superseded stays known', () => {
    expect(isKnownAt({ id: 'card-1', recordedIn: 12 }, 11)).toBe(false)
    expect(isKnownAt({ id: 'card-1', recordedIn: 12 }, 12)).toBe(true)
    expect(isKnownAt({ id: 'card-1', recordedIn: 12 }, 2_000_000_000)).toBe(true)
  })

  it.each([
    [0, false],
    [1, true],
    [2_000_000_000, true],
    [2_000_000_001, false],
    [1.5, false],
    ['1', false],
  ])('[KE8] %s as the number of an entry: %s', (value, isNumber) => {
    expect(entryNumber.safeParse(value).success).toBe(isNumber)
  })
})

describe('fields', () => {
  it.each([
    ['one letter', 'a', true],
    ['64 letters', 'a'.repeat(64), true],
    ['65 letters', 'a'.repeat(65), false],
    ['letters, digits, hyphens', 'card-2027-04', true],
    ['nothing', '', false],
    ['a capital', 'Card', false],
    ['an underscore', '__proto__', false],
    ['a blank', 'card 1', false],
    ['a line end', 'card\n', false],
    ['another script', 'карта', false],
    ['a million letters', 'a'.repeat(1_000_000), false],
  ])('[KE9] %s', (_name, id, isId) => {
    expect(idField.safeParse(id).success).toBe(isId)
  })

  it.each([
    'Łukasz Wrzos',
    'Nguyễn Thị Sương',
    'Siobhán Ó Briain',
    "Jean-Luc d'Aoust",
    'Sowande',
    'نسرین پور\u200cرضا',
    '𠮷野 薫',
    'x'.repeat(200),
  ])('[KE10] %s is a name', (name) => {
    expect(nameField.parse(name)).toBe(name)
  })

  it.each([
    ['nothing', '', 'a name may not be empty'],
    ['blanks', ' \u00a0 ', 'a name may not be empty'],
    ['201 letters', 'x'.repeat(201), 'a name has at most 200 letters'],
    ['a million letters', 'x'.repeat(1_000_000), 'a name has at most 200 letters'],
    ['two lines', 'Ada\nBell', 'a name stands on one line, without control characters'],
    ['a line separator', 'Ada\u2028Bell', 'a name stands on one line, without control characters'],
    ['a tab', 'Ada\tBell', 'a name stands on one line, without control characters'],
    ['an escape', 'Ada\u001b[2J', 'a name stands on one line, without control characters'],
    ['a null', 'Ada\u0000', 'a name stands on one line, without control characters'],
    ['half a letter', 'Ada \ud842', 'a name stands on one line, without control characters'],
  ])('[KE10] %s is no name', (_name, text, message) => {
    expect(messages(nameField, text)).toEqual([message])
  })

  it.each([
    ['nothing', '', ['the text may not be empty']],
    ['blanks and line ends', ' \n ', ['the text may not be empty']],
    ['two lines and a tab', 'First.\r\n\tSecond.', []],
    ['4,000 letters', 'x'.repeat(4000), []],
    ['4,001 letters', 'x'.repeat(4001), ['a text has at most 4000 letters']],
    ['a null', 'First\u0000', ['a text has no control characters but tabs and line ends']],
    ['an escape', 'First\u001b[2J', ['a text has no control characters but tabs and line ends']],
    ['half a letter', 'First \ud842', ['a text has no control characters but tabs and line ends']],
  ])('[KE11] %s as a text', (_name, text, expected) => {
    expect(messages(textField, text)).toEqual(expected)
  })
})

describe('outcomes', () => {
  it('[KE12] a success holds its value, a refusal its problem, a broken invariant its name', () => {
    expect(success(3)).toEqual({ ok: true, value: 3 })
    expect(refusal('two heirs')).toEqual({ ok: false, problem: 'two heirs' })
    expect(new InvariantBroken('a gap').name).toBe('InvariantBroken')
    expect(new InvariantBroken('a gap')).toBeInstanceOf(Error)
  })
})
