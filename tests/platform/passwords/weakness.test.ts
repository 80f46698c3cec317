import { describe, expect, it } from 'vitest'
import { newPasswordField } from '../../../lib/platform/passwords/password.schema.ts'
import { weaknessOf } from '../../../lib/platform/passwords/weakness.ts'

describe('passwords that are long and easy', () => {
  // Common practice, no source: the heads of published lists, made long.
  it.each([
    ['passwordpassword', 'repeats'],
    ['aaaaaaaaaaaaaaaaaaaa', 'repeats'],
    ['abcabcabcabcabca', 'repeats'],
    ['123456789012345', 'run'],
    ['1234567890abcdefg', 'run'],
    ['qwertyuiopasdfgh', 'run'],
    ['zyxwvutsrqponml', 'run'],
    ['password1234567!', 'common'],
    ['Welcome-Admin-2027', 'common'],
    ['kerfbook-crosscut-saw', 'common'],
  ])('%s: %s', (password, weakness) => {
    expect(weaknessOf(password)).toBe(weakness)
    expect(newPasswordField.safeParse(password).success).toBe(false)
  })

  it('words that stand beside it', () => {
    expect(weaknessOf('ottoline-ridge-1', ['ottoline', 'Invented Ridge Saw Program'])).toBe('own-words')
    expect(weaknessOf('ottoline eats plums quietly', ['ottoline'])).toBeUndefined()
  })

  it.each([
    'a saw wants two people',
    'a whole new sentence',
    'kj4m-9xqp-7ztw-h2nd-b6rv',
    'Đường mòn qua rừng thông',
    'пила любит двоих людей',
  ])('%s is taken', (password) => {
    expect(weaknessOf(password)).toBeUndefined()
    expect(newPasswordField.safeParse(password).success).toBe(true)
  })

  it.each([
    ['fourteen letters', 'two saws sing!'],
    ['more than 256', 'a sentence '.repeat(30)],
  ])('%s are refused', (_name, password) => {
    expect(newPasswordField.safeParse(password).success).toBe(false)
  })
})
