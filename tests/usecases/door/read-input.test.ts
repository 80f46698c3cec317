import { expect, it } from 'vitest'
import { z } from 'zod'
import { readInput } from '../../../lib/usecases/door/read-input.ts'
import { signIn } from '../../../lib/usecases/accounts/sign-in.ts'

const nested = z.strictObject({ people: z.array(z.strictObject({ name: z.string() })), n: z.number() })
const text = (...names: string[]) => ({ people: names.map((name) => ({ name })), n: 1 })

it.each(['so\0me', '\0', 'half \uD83E', '\uDEB5 half'])(
  'a text that cannot be kept is told where it stands: %j',
  (name) => {
    expect(readInput(nested, text('whole 🪵', name))).toMatchObject({
      ok: false,
      problem: [
        { path: 'people.1.name', message: 'this holds a character that cannot be kept; type it again' },
      ],
    })
    expect(readInput(signIn.input, { name, password: 'some-password' })).toMatchObject({
      ok: false,
      problem: [{ path: 'name' }],
    })
  },
)

it('any other text is read as it is, lines and all', () => {
  const input = text('whole 🪵', 'two\nlines\tand a tab')
  expect(readInput(nested, input)).toEqual({ ok: true, value: input })
})
