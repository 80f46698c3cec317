import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { AUTHORITY_IS_NOT_SAFETY, NO_PUBLISHED_RATING } from '../../lib/wording/notice.ts'
import { answered, DEMO, DEMO_DAY, fileWith, refusedWith, runLine } from './command-line.ts'

const WORKSHEET = fileURLToPath(new URL('../../seeds/examples/worksheet-log.json', import.meta.url))

/** How many columns of the CSV stand before those of the items. */
const FRAME = 6

type MatrixJson = {
  people: { id: string }[]
  items: {
    item: string
    first: string
    last: string
    answers: { person: string; standing: string; supervision?: string }[]
  }[]
}

describe('matrix', () => {
  it('[CL20] text, CSV and data say the same of everybody and every item', () => {
    const rows = answered('matrix', DEMO, '--csv', ...DEMO_DAY)
      .trimEnd()
      .split('\r\n')
      .map((line) => line.match(/"[^"]*"|[^,]+/g)!)
    const data = JSON.parse(answered('matrix', DEMO, '--json', ...DEMO_DAY)) as MatrixJson
    const text = answered('matrix', DEMO, ...DEMO_DAY)
    expect(rows).toHaveLength(60)
    expect(rows[0]!.slice(FRAME).map((cell) => cell.replace(/^"/, '').split(' ')[0])).toEqual(
      data.items.map(({ item }) => item),
    )
    expect(rows[0]![FRAME]).toBe('i-c-01-log-1 Refresher log 1 (20 May 2027)')
    expect(data.items.length).toBeGreaterThan(90)
    for (const [column, item] of data.items.entries()) {
      const standings = item.answers.map(({ standing, supervision }) => supervision ?? standing)
      expect(rows.slice(1).map((row) => row[column + FRAME])).toEqual(standings)
    }
    expect(text).toContain('59 people')
    const signs = { '#': 'independent', s: 'own-level', t: 'training', '?': 'unknown', '.': 'none' } as const
    const wrzos = [...text.matchAll(/^Łukasz Wrzos +(.*)$/gm)]
      .map(([, row]) => row!.replaceAll(' ', ''))
      .join('')
    const row = rows.find(([id]) => id === 'p-lukasz-wrzos')!
    expect(Array.from(wrzos).map((sign) => signs[sign as keyof typeof signs])).toEqual(row.slice(FRAME))
    expect(text).toContain(AUTHORITY_IS_NOT_SAFETY)
  })

  it('[CL20] every row of the CSV says for which days, as known when, and that authority is not safety', () => {
    const data = JSON.parse(answered('matrix', DEMO, '--json', ...DEMO_DAY)) as MatrixJson
    const firstDay = data.items.map(({ first }) => first).sort()[0]
    const lastDay = data.items
      .map(({ last }) => last)
      .sort()
      .at(-1)
    for (const [said, knownAt] of [
      [[], 'entry 76 (2027-05-03T14:30:00.000Z)'],
      [['--known-at', '60'], 'entry 60 (2027-04-12T20:25:00.000Z)'],
    ] as const) {
      const [head = '', ...rows] = answered('matrix', DEMO, '--csv', ...DEMO_DAY, ...said)
        .trimEnd()
        .split('\r\n')
      expect(head).toMatch(/^person,name,first_day,last_day,known_at,notice,/)
      for (const row of rows) expect(row).toMatch(/^[a-z0-9-]+,.*,\d{4}-\d\d-\d\d,\d{4}-\d\d-\d\d,entry \d+ /)
      for (const row of rows) expect(row).toContain(`,${knownAt},`)
      for (const row of rows) expect(row).toContain(AUTHORITY_IS_NOT_SAFETY)
      if (said.length === 0) for (const row of rows) expect(row).toContain(`,${firstDay},${lastDay},`)
    }
  })

  it.each([40, 100, 200])(
    '[CL20] text fits a terminal of %i letters, with numbers above the tens',
    (width) => {
      const out = runLine(['matrix', DEMO, ...DEMO_DAY], { width }).out
      expect(out).toContain('   1  i-c-01-log-1  Refresher log 1, bucking at Rough Gate')
      const rows = out.split('\n').filter((line) => line.startsWith('Łukasz Wrzos'))
      for (const row of rows) expect(row.length).toBeLessThanOrEqual(Math.max(width, 60))
      expect(out).toMatch(/^Items 1 to \d+\n +1(?: +11)?/m)
    },
  )

  it('[CL20] each item is asked on its own days; one that leaves them open is asked today', () => {
    const file = JSON.parse(readFileSync(DEMO, 'utf8')) as {
      items: { id: string; firstDay?: string; lastDay?: string }[]
    }
    const [first, second, third] = file.items
    delete first!.firstDay
    delete first!.lastDay
    delete second!.firstDay
    delete third!.lastDay
    const data = JSON.parse(
      answered('matrix', fileWith(JSON.stringify(file)), '--json', ...DEMO_DAY),
    ) as MatrixJson
    const days = (id: string) => {
      const { first: from, last: to } = data.items.find(({ item }) => item === id)!
      return [from, to]
    }
    expect(days(first!.id)).toEqual(['2027-05-03', '2027-05-03'])
    expect(days(second!.id)).toEqual(['2027-05-03', second!.lastDay])
    expect(days(third!.id)).toEqual([third!.firstDay, third!.firstDay])
  })
})

describe('check', () => {
  it('[CL21] counts a good file and lists its doubts', () => {
    const out = answered('check', DEMO)
    expect(out).toMatch(/no problems\. Ashlar Range Saw Program.*: 76 entries, \d+ facts, 59 people\./)
    const doubts = Number(/^(\d+) doubts/m.exec(out)?.[1])
    expect(out.trimEnd().split('\n')).toHaveLength(doubts + 2)
    expect(out).toContain('Several people are called Dana Whitlow')
  })

  it('[CL21] compares copies of books that ship with them', () => {
    const file = JSON.parse(readFileSync(DEMO, 'utf8')) as {
      editions: { rules: { id: string; says: string }[] }[]
    }
    const rule = file.editions[0]!.rules.find(({ id }) => id === 'card.days')!
    rule.says = 'Something else.'
    const out = answered('check', fileWith(JSON.stringify(file)))
    expect(out).toContain(
      '  editions[0]: This edition is not as it ships with “Cooperator crosscut book”. It differs in card.days.',
    )
    expect(answered('check', DEMO)).not.toContain('not as it ships')
  })

  it('[CL21] says every problem with path, value and reason', () => {
    const file = JSON.parse(readFileSync(DEMO, 'utf8')) as {
      people: { name: string }[]
      cards: { effectiveDay: string; lastDay: string; level: string }[]
      poeple?: unknown[]
    }
    file.people[0]!.name = ''
    file.cards[0]!.lastDay = '2027-02-30'
    file.cards[1]!.level = 'D'
    file.poeple = []
    const path = fileWith(JSON.stringify(file))
    const err = refusedWith(1, 'check', path)
    expect(err.split('\n')[0]).toMatch(/\d problems$/)
    expect(err).toMatch(/people\[0\]\.name: "": /)
    expect(err).toContain('cards[0].lastDay: "2027-02-30": There is no such day.')
    expect(err).toMatch(/cards\[1\]\.level: "D": No level of that book “D”/)
    expect(err).toContain('poeple: []: The key “poeple” is not known here. Is “people” meant?')
    expect(refusedWith(1, 'matrix', path)).toContain('nothing was answered')
  })

  it('[CL21] the other commands show the first twenty and say how many more there are', () => {
    const file = JSON.parse(readFileSync(DEMO, 'utf8')) as { people: { name: string }[] }
    for (const person of file.people) person.name = ''
    const path = fileWith(JSON.stringify(file))
    expect(refusedWith(1, 'matrix', path)).toContain('and 39 more. The command check lists them.')
    expect(refusedWith(1, 'check', path).trimEnd().split('\n')).toHaveLength(60)
  })
})

describe('rate', () => {
  const worksheet = () =>
    JSON.parse(readFileSync(WORKSHEET, 'utf8')) as { observations: Record<string, string> } & Record<
      string,
      unknown
    >

  it('[CL22] says the complexity, what made it so, and that the size-up overrules it', () => {
    const out = answered('rate', WORKSHEET)
    expect(out).toContain('This makes the work highly complex.')
    expect(out).toContain('rule worksheet.stacking')
    expect(out).toContain('Bind, side bind: at least moderately complex.')
    expect(out).toContain(NO_PUBLISHED_RATING)
    expect(out.trimEnd().endsWith(AUTHORITY_IS_NOT_SAFETY)).toBe(true)
    expect(JSON.parse(answered('rate', WORKSHEET, '--json'))).toMatchObject({
      complexity: 'high',
      madeBy: ['worksheet.stacking'],
      missing: [],
    })
  })

  it('[CL22] the edition is the one named, the latest of the book named, or the federal one', () => {
    const { edition: _edition, ...open } = worksheet()
    expect(answered('rate', fileWith(JSON.stringify(open)))).toContain('FSM 2358')
    expect(answered('rate', fileWith(JSON.stringify({ ...open, book: 'cooperator-crosscut' })))).toContain(
      'First edition',
    )
    expect(refusedWith(1, 'rate', fileWith(JSON.stringify({ ...open, book: 'federal' })))).toContain(
      'No book that ships',
    )
    expect(
      refusedWith(1, 'rate', fileWith(JSON.stringify({ ...open, edition: 'federal-crosscut-2015' }))),
    ).toContain('Is federal-crosscut-2016 meant?')
  })

  it('[CL22] says by which book it rated, and that of --book goes before what the worksheet names', () => {
    const usual = 'The worksheet names no book; --book rates it by another.'
    const { edition: _edition, ...open } = worksheet()
    const named = answered('rate', WORKSHEET)
    expect(named).toContain('by “Federal crosscut book”, in the edition “FSM 2358')
    expect(named).not.toContain(usual)
    expect(answered('rate', fileWith(JSON.stringify(open)))).toContain(
      `by “Federal crosscut book”, in the edition “FSM 2358, effective 19 July 2016”.\n${usual}`,
    )
    const other = answered('rate', WORKSHEET, '--book', 'cooperator-crosscut')
    expect(other).toContain('by “Cooperator crosscut book”')
    expect(other).not.toContain(usual)
    expect(answered('rate', WORKSHEET, '--book', DEMO)).toContain('by “Federal crosscut book”')
    expect(refusedWith(1, 'rate', WORKSHEET, '--book', 'cooperator')).toContain('cooperator-crosscut')
    expect(refusedWith(1, 'rate', WORKSHEET, '--book', 'interagency-faller')).toContain('no worksheet')
    const rated = (...words: string[]) => JSON.parse(answered('rate', ...words, '--json')) as unknown
    expect(rated(WORKSHEET)).toMatchObject({ book: 'federal-crosscut', namedBy: 'worksheet' })
    expect(rated(fileWith(JSON.stringify(open)))).toMatchObject({ namedBy: 'nobody' })
    expect(rated(WORKSHEET, '--book', 'cooperator-crosscut')).toMatchObject({
      book: 'cooperator-crosscut',
      edition: 'cooperator-crosscut-1',
      namedBy: 'command',
    })
  })

  it('[CL22] what was not observed leaves it unrated, and what cannot be read is refused with all reasons', () => {
    const empty = { ...worksheet(), observations: {} }
    expect(answered('rate', fileWith(JSON.stringify(empty)))).toContain('Not rated: ')
    const wrong = { ...worksheet(), observations: { bin: 'side', bind: 'sidd', lean: 'none' } }
    const err = refusedWith(1, 'rate', fileWith(JSON.stringify(wrong)))
    expect(err).toContain('Is “bind” meant?')
    expect(err).toContain('Is “side” meant?')
    expect(err).toContain('“lean” is one of felling, not of this work')
    expect(
      refusedWith(1, 'rate', fileWith('{"format":"kerfbook-worksheet/1","workKind":"limbing"}')),
    ).toContain('observations')
  })
})

describe('book', () => {
  it('[CL23] reads a book that ships: every rule with its source and mark', () => {
    const out = answered('book', 'federal-crosscut')
    const file = JSON.parse(
      readFileSync(new URL('../../seeds/books/federal-crosscut.json', import.meta.url), 'utf8'),
    ) as { editions: { rules: { id: string; source: string }[] }[] }
    for (const { id, source } of file.editions[0]!.rules) {
      expect(out).toContain(`    ${id}: `)
      expect(out).toContain(source)
    }
    expect(out).toContain('from memory, not confirmed')
  })

  it('[CL23] reads the books of a program, its own first', () => {
    const out = answered('book', DEMO)
    expect(out.startsWith('Federal crosscut book')).toBe(true)
    expect(out).toContain('Edition interagency-faller-1')
  })

  it('[CL23] says what changes from one to another, and that nothing does', () => {
    const diff = answered('book', 'cooperator-crosscut', '--against', 'federal-crosscut')
    expect(diff).toContain('From federal-crosscut-2016 to cooperator-crosscut-1')
    expect(diff).toMatch(/grant\.bucking\.A\n {4}cells\.moderate: was training, now none/)
    expect(answered('book', DEMO, '--against', 'federal-crosscut')).toContain('nothing changes in')
  })

  it('[CL23] what is no book is refused in words', () => {
    expect(refusedWith(1, 'book', 'federal-croscut')).toContain('Is federal-crosscut meant?')
    expect(refusedWith(1, 'book', 'federal-crosscut', '--against', WORKSHEET)).toContain('holds no rule book')
    expect(refusedWith(1, 'book', fileWith('{"format":"kerfbook-program/1"}'))).toContain('missing')
  })
})
