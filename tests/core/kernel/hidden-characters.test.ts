import { describe, expect, it } from 'vitest'
import { cardNumberField, idField, nameField, textField } from '../../../lib/core/kernel/fields.schema.ts'
import { foldedName, foldedNumber } from '../../../lib/core/kernel/folded.ts'
import { scriptsAlikeIn } from '../../../lib/core/kernel/look-alikes.ts'
import { hiddenInId, hiddenInName } from '../../../lib/core/kernel/hidden-characters.ts'

const million = 1_000_000

describe('characters that nobody sees', () => {
  it.each([
    ['a zero-width space', 'Dana\u200b Whitlow', 'U+200B', 5],
    ['a word joiner', '\u2060Dana', 'U+2060', 1],
    ['a byte order mark inside', 'Da\ufeffna', 'U+FEFF', 3],
    ['a left-to-right mark at the end', 'Dana\u200e', 'U+200E', 5],
    ['an override of the reading order', 'Dana \u202ewoltihW', 'U+202E', 6],
    ['an isolate', '\u2067Dana\u2069', 'U+2067', 1],
    ['a soft hyphen', 'Whit\u00adlow', 'U+00AD', 5],
    ['a joiner between letters that do not join', 'Da\u200dna', 'U+200D', 3],
    ['a non-joiner at the start', '\u200cنور', 'U+200C', 1],
    ['a non-joiner twice', 'پور\u200c\u200cرضا', 'U+200C', 5],
    ['a Hangul filler alone', '\u3164', 'U+3164', 1],
    ['a variant selector after a Latin letter', 'Dana\ufe0f', 'U+FE0F', 5],
    ['an empty Braille cell', 'Dana\u2800Whitlow', 'U+2800', 5],
    ['an empty note head', 'Dana\u{1d159}', 'U+1D159', 5],
    ['a Khitan filler', 'Dana\u{16fe4}', 'U+16FE4', 5],
    ['a tag, after a letter of two halves', '𠮷\u{e0041}', 'U+E0041', 2],
  ])('[KE13] [KE15] %s is told in a name', (_title, name, code, at) => {
    expect(hiddenInName(name)).toEqual({ code, at })
    expect(nameField.safeParse(name).success).toBe(false)
  })

  it.each([
    ['Persian with a non-joiner', 'نسرین پور\u200cرضا'],
    ['Sinhala with a joiner', 'ශ්\u200dරී'],
    ['a Malayalam letter that ends in a joiner', 'അവന\u0d4d\u200d'],
    ['Bengali with a non-joiner', 'র\u200c্যাম'],
    ['a Japanese name with a variant', '葛\u{e0100}城'],
    ['Devanagari without any', 'श्रेया'],
    ['a combining accent', 'Jose\u0301'],
  ])('[KE13] %s is a name', (_title, name) => {
    expect(hiddenInName(name)).toBeUndefined()
    expect(nameField.parse(name)).toBe(name)
  })

  it('[KE15] what shapes a letter is counted among the letters before', () => {
    expect(hiddenInName('پور\u200cرضا\u200b')).toEqual({ code: 'U+200B', at: 8 })
  })

  it.each([
    ['plain', 'K-0431', true],
    ['with blanks and a slash', 'AB 12/7', true],
    ['40 letters', 'K'.repeat(40), true],
    ['41 letters', 'K'.repeat(41), false],
    ['nothing', '', false],
    ['blanks', '  ', false],
    ['two lines', 'K-1\nK-2', false],
    ['an escape', 'K\u001b[2J', false],
    ['a zero-width space', 'K-\u200b1', false],
    ['an empty Braille cell', 'K-\u28001', false],
    ['a joiner, even after a letter that joins', 'ب\u200d1', false],
    ['an Arabic number sign, which is seen but belongs in no number', '\u06001', false],
  ])('[KE14] a card number of %s', (_title, number, isNumber) => {
    expect(cardNumberField.safeParse(number).success).toBe(isNumber)
  })

  it('[KE14] an id has none', () => {
    expect(hiddenInId('p-da\u200bna')).toEqual({ code: 'U+200B', at: 5 })
    expect(idField.safeParse('p-da\u200bna').success).toBe(false)
    expect(hiddenInId('p-dana')).toBeUndefined()
  })

  it.each([1, 20])('[KE17] a text of %i million letters is told to be too long, and no more', (millions) => {
    const text = 'x'.repeat(millions * million)
    for (const field of [nameField, textField, cardNumberField]) {
      const read = field.safeParse(text)
      expect(read.error?.issues.map(({ code }) => code)).toEqual(['too_big'])
    }
  })
})

describe('names that read alike', () => {
  it.each([
    ['capitals', 'Dana WHITLOW'],
    ['blanks at the ends', ' Dana Whitlow '],
    ['two blanks', 'Dana  Whitlow'],
    ['a hard blank', 'Dana\u00a0Whitlow'],
    ['a zero-width space', 'Dana\u200b Whitlow'],
    ['wide letters', 'Ｄａｎａ Whitlow'],
  ])('[KE16] %s make no difference', (_title, name) => {
    expect(foldedName(name)).toBe(foldedName('Dana Whitlow'))
  })

  it('[KE16] one letter in two forms is one, accents and other letters are not', () => {
    expect(foldedName('Jose\u0301')).toBe(foldedName('JOS\u00c9'))
    expect(foldedName('Strauß')).toBe(foldedName('STRAUSS'))
    expect(foldedName('Οδυσσεύς')).toBe(foldedName('ΟΔΥΣΣΕΎΣ'))
    expect(foldedName('José')).not.toBe(foldedName('Jose'))
    expect(foldedName('Dana Whitlow')).not.toBe(foldedName('DanaWhitlow'))
  })

  it('[KE16] in numbers blanks and the kind of dash make none either', () => {
    for (const number of ['k-0431', 'K - 0431', 'K\u20110431', 'K–0431 ', 'Ｋ-0431'])
      expect(foldedNumber(number)).toBe(foldedNumber('K-0431'))
    expect(foldedNumber('K0431')).not.toBe(foldedNumber('K-0431'))
  })

  it.each([
    ['a minus sign', 'K\u22120431'],
    ['a superscript minus', 'K\u207b0431'],
    ['a modifier minus', 'K\u02d70431'],
    ['a hyphen bullet', 'K\u20430431'],
    ['a heavy minus', 'K\u27960431'],
    ['a rule of a box', 'K\u25000431'],
    ['the Han sign for one', 'K\u4e000431'],
    ['the Japanese mark of length', 'K\u30fc0431'],
    ['a Cyrillic letter', '\u041a-0431'],
    ['a small Cyrillic letter', '\u043a-0431'],
    ['a Greek letter', '\u039a-0431'],
    ['a Cherokee letter', '\u13e6-0431'],
    ['a Lisu letter', '\ua4d7-0431'],
    ['the letter O', 'K-O431'],
    ['the Cyrillic letter O', 'K-\u041e431'],
    ['the letter I', 'K-043I'],
    ['the Ukrainian letter I', 'K-043\u0406'],
  ])('[KE18] in numbers %s is what it looks like', (_title, number) => {
    expect(foldedNumber(number)).toBe(foldedNumber('K-0431'))
  })

  it('[KE18] letters that look different stay different, and names keep their letters', () => {
    const shapes = [
      'K-0431',
      'H-0431',
      'X-0431',
      '\u0416-0431',
      '\u03a9-0431',
      '\u0418-0431',
      'L-0431',
      'S-0431',
    ]
    expect(new Set(shapes.map(foldedNumber)).size).toBe(shapes.length)
    expect(foldedName('D\u0430na')).not.toBe(foldedName('Dana'))
  })

  it.each([
    ['K-0431', ['Latin']],
    ['\u041a-0431', ['Cyrillic']],
    ['\u041a-0431A', ['Latin', 'Cyrillic']],
    ['\u039aK\u041a', ['Latin', 'Greek', 'Cyrillic']],
    ['\uff2b-0431', ['Latin']],
    ['\u4ee4K-0431', ['Latin']],
    ['0431', []],
  ])('[KE18] of %s the scripts that look alike are %j', (number, scripts) => {
    expect(scriptsAlikeIn(number)).toEqual(scripts)
  })
})
