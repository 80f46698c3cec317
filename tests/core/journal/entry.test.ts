import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../../lib/core/kernel/canonical-json.ts'
import { readEntryBody } from '../../../lib/core/journal/entry-body.schema.ts'
import {
  bytesOfHex,
  entryHash,
  answerDigest,
  factDigest,
  hashedText,
} from '../../../lib/core/journal/entry.ts'
import { headLogLine, headText, readHead, readHeadLog } from '../../../lib/core/journal/heads.ts'
import { sha256 } from './sound-journal.ts'

const entry = {
  n: 2,
  at: '2027-05-03T10:00:00.000Z',
  statedAt: null,
  command: '00000000-0000-4000-8000-000000000002',
  actor: null,
  event: 'card-issued',
  v: 1,
  body: '{"about":[]}',
}

describe('what is hashed', () => {
  it('[JO3] an entry is hashed as this text, the body in it as a text, what it lacks as null', () => {
    expect(hashedText(entry)).toBe(
      '{"actor":null,"at":"2027-05-03T10:00:00.000Z","body":"{\\"about\\":[]}",' +
        '"command":"00000000-0000-4000-8000-000000000002","event":"card-issued","n":2,"stated_at":null,"v":1}',
    )
  })

  it('[JO3] its hash is taken of the bytes of the hash before it, not of their digits', () => {
    const prev = 'ab'.repeat(32)
    const expected = createHash('sha256')
      .update(Buffer.concat([Buffer.alloc(32, 0xab), Buffer.from(hashedText(entry), 'utf8')]))
      .digest('hex')
    expect(entryHash(entry, prev, sha256)).toBe(expected)
  })

  it('[JO3] the first entry has nothing before its text', () => {
    expect(entryHash(entry, null, sha256)).toBe(createHash('sha256').update(hashedText(entry)).digest('hex'))
  })

  it('[JO4] a fact is hashed as the bytes of its salt and the canonical text of its row', () => {
    const row = { id: 'x', recorded_in: 3, first_day: '2027-05-03', last_day: null }
    const expected = createHash('sha256')
      .update(Buffer.from([0, 255]))
      .update('{"first_day":"2027-05-03","id":"x","last_day":null,"recorded_in":3}')
      .digest('hex')
    expect(factDigest(row, '00ff', sha256)).toBe(expected)
  })

  it.each(['0', 'AB', 'zz', '0x12'])('[JO4] a salt that is no hexadecimal throws: %s', (hex) => {
    expect(() => bytesOfHex(hex)).toThrow(/not hexadecimal/)
  })
})

describe('the digest of a kept answer', () => {
  it('[JO18] is that of the canonical text of its row', () => {
    const row = { id: 'x', n: 3, today: '2027-05-03', question: { work: { item: 'i' }, because: 'printed' } }
    const expected = createHash('sha256')
      .update('{"id":"x","n":3,"question":{"because":"printed","work":{"item":"i"}},"today":"2027-05-03"}')
      .digest('hex')
    expect(answerDigest(row, sha256)).toBe(expected)
  })
})

describe('the body of an entry', () => {
  const body = {
    about: ['a'],
    facts: [{ table: 'card_fact', id: 'f', digest: 'd' }],
    closed: [{ table: 'card_fact', id: 'e' }],
    outcome: { card: 'a' },
    said: 'x',
  }

  it('[JO5] is read back', () => {
    expect(readEntryBody(canonicalJson(body))).toEqual(body)
  })

  it.each([
    ['what is not canonical', JSON.stringify(body)],
    ['no JSON', '{"about":'],
    ['no object', '[]'],
    ['another shape', canonicalJson({ ...body, facts: ['f'] })],
    ['one without its outcome', canonicalJson({ about: [], facts: [], closed: [] })],
    ['one with two members of a name', '{"about":[],"about":[],"closed":[],"facts":[],"outcome":1}'],
  ])('[JO5] is none where it is %s', (_, text) => {
    expect(readEntryBody(text)).toBeUndefined()
  })
})

describe('heads', () => {
  const hash = '0123456789abcdef'.repeat(4)

  it('[JO6] a head is written and read back, in capitals too', () => {
    expect(headText({ n: 17, hash })).toBe(`17:${hash}`)
    expect(readHead(` 17:${hash.toUpperCase()}\n`)).toEqual({ n: 17, hash })
  })

  it.each(['', '17', `0:${hash}`, `17:${hash}0`, `17:${hash.slice(1)}`, `-1:${hash}`, `017:${hash}`])(
    '[JO6] "%s" is none',
    (text) => {
      expect(readHead(text)).toBeUndefined()
    },
  )

  it('[JO6] a log gives its heads and the lines that hold none, and leaves out a last line without its end', () => {
    const line = (n: number) => headLogLine({ n, hash }, '2027-05-03T10:00:00.000Z')
    expect(line(1)).toBe(`1 ${hash} 2027-05-03T10:00:00.000Z\n`)
    const log = `${line(1)}rubbish\n\n${line(2)}1:${hash}\n${line(3).slice(0, -1)}`
    expect(readHeadLog(log)).toEqual({
      heads: [
        { n: 1, hash },
        { n: 2, hash },
      ],
      unreadable: [2, 3, 5],
    })
    expect(readHeadLog('')).toEqual({ heads: [], unreadable: [] })
  })
})
