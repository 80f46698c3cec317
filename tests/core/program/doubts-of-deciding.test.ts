import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { BookFile } from '../../../lib/core/program/book-file.schema.ts'
import { programDoubts } from '../../../lib/core/program/doubts.ts'
import type { Doubt, DoubtKind } from '../../../lib/core/program/problems.ts'
import { readBookFile } from '../../../lib/core/program/read-book.ts'
import { readProgram } from '../../../lib/core/program/read-program.ts'
import {
  addVersion,
  example,
  extended,
  fact,
  part,
  section,
  setIn,
  type Change,
  type Raw,
  type RawValue,
} from './small-program.ts'

/** The doubts of the kinds asked about, of the example after some changes. */
function doubtsOf(kinds: readonly DoubtKind[], changes: readonly Change[], shipped?: BookFile[]): Doubt[] {
  const file = example()
  for (const change of changes) change(file)
  // Through text, which leaves out what is set to nothing.
  const read = readProgram(JSON.stringify(file))
  if (!read.ok) throw new Error(JSON.stringify(read.problem))
  return programDoubts(read.value, shipped).filter(({ kind }) => kinds.includes(kind))
}

const addTo = (name: string, id: string, changes: Raw): Change => addVersion(name, id, changes)

describe('people and cards that read alike', () => {
  it.each(['Tomo Askeland', 'TOMO ASKELAND', ' Tomo  Askeland', 'Ｔomo\u00a0Askeland'])(
    '[PR27] “%s” is like Tomo Askeland',
    (name) => {
      expect(doubtsOf(['same-name'], [setIn('people', 'wren', 'name', name)])).toEqual([
        {
          path: 'people[1]',
          id: 'tomo',
          person: 'tomo',
          kind: 'same-name',
          name: 'Tomo Askeland',
          people: ['tomo', 'wren'],
        },
        { path: 'people[2]', id: 'wren', person: 'wren', kind: 'same-name', name, people: ['tomo', 'wren'] },
      ])
    },
  )

  it('[PR27] an accent makes two names', () => {
    expect(doubtsOf(['same-name'], [setIn('people', 'wren', 'name', 'Tomó Askeland')])).toEqual([])
  })

  it('[PR27] of very many people of one name twenty are named', () => {
    const crowd: Change = (file) => {
      for (let at = 0; at < 5000; at += 1)
        section(file, 'people').push({ ...fact(file, 'people', 'tomo'), id: `x-${at}` })
    }
    const found = doubtsOf(['same-name'], [crowd])
    expect(found).toHaveLength(5001)
    for (const doubt of found)
      expect(doubt.kind === 'same-name' && [doubt.people.length, doubt.more]).toEqual([20, 4981])
  })

  it('[PR27] card numbers that differ in capitals, blanks or dashes', () => {
    const number = textOf(fact(example(), 'cards', 'tomo-card')['number'])
    const alike = ` ${number.toLowerCase().replace('-', ' \u2013')}`
    const change = addTo('cards', 'tomo-card', { id: 'again', number: alike })
    expect(doubtsOf(['numbers-alike'], [change])).toMatchObject([
      { path: 'cards[2]', number, others: [alike] },
      { id: 'again', number: alike, others: [number] },
    ])
    expect(doubtsOf(['numbers-alike'], [addTo('cards', 'tomo-card', { id: 'again', line: 2 })])).toEqual([])
    expect(
      doubtsOf(['numbers-alike'], [addTo('cards', 'tomo-card', { id: 'again', number: `${number}1` })]),
    ).toEqual([])
  })

  it.each([
    ['a minus sign for the dash', 'K-0431', 'K\u22120431'],
    ['a Cyrillic letter for the first', 'K-0431', '\u041a-0431'],
    ['the letter O for a nought', 'K-0431', 'K-O431'],
  ])('[PR27] card numbers of which one has %s', (_name, number, twin) => {
    const changes = [
      setIn('cards', 'tomo-card', 'number', number),
      addTo('cards', 'tomo-card', { id: 'again', number: twin }),
    ]
    expect(doubtsOf(['numbers-alike'], changes)).toMatchObject([
      { id: 'tomo-card', number, others: [twin] },
      { id: 'again', number: twin, others: [number] },
    ])
  })

  it.each([
    ['\u041a-0431A', ['Latin', 'Cyrillic']],
    ['\u041a-0431', undefined],
    ['K-0431', undefined],
  ])('[PR27] the scripts in the card number %s that look alike: %j', (number, scripts) => {
    const found = doubtsOf(['number-mixes-scripts'], [setIn('cards', 'tomo-card', 'number', number)])
    const told = { path: 'cards[2]', person: 'tomo', kind: 'number-mixes-scripts', number, scripts }
    expect(found).toMatchObject(scripts === undefined ? [] : [told])
    expect(found).toHaveLength(scripts === undefined ? 0 : 1)
  })
})

describe('what was decided oddly', () => {
  const KINDS = ['lifted-before-recorded', 'resolved-by-holder', 'resolved-into-nothing'] as const

  it('[PR28] nothing in the example', () => {
    expect(doubtsOf(KINDS, [])).toEqual([])
  })

  /** Withdraws the suspension in one further entry and records it again in another. */
  const again =
    (said: Raw): Change =>
    (file) => {
      const entries = section(file, 'entries')
      const n = entries.length
      entries.push({ ...entries.at(-1), n: n + 1 }, { ...entries.at(-1), n: n + 2 })
      const suspension = fact(file, 'suspensions', 'tomo-stand-down')
      suspension['supersededIn'] = n + 1
      section(file, 'suspensions').push({
        ...suspension,
        recordedIn: n + 2,
        supersededIn: undefined,
        ...said,
      })
    }

  it('[PR28] a suspension recorded again after its lift', () => {
    const file = example()
    const liftEntry = fact(file, 'lifts', 'tomo-lift')['recordedIn']
    const entry = section(file, 'entries').length + 2
    expect(doubtsOf(KINDS, [again({})])).toMatchObject([
      {
        id: 'tomo-stand-down',
        kind: 'lifted-before-recorded',
        firstDay: '2027-05-26',
        entry,
        lift: 'tomo-lift',
        liftEntry,
      },
    ])
  })

  it('[PR28] a correction of a suspension that was lifted is none, and a lift of its own ends it well', () => {
    const corrected: Change = (file) => {
      const entries = section(file, 'entries')
      const n = entries.length + 1
      entries.push({ ...entries.at(-1), n })
      const before = fact(file, 'suspensions', 'tomo-stand-down')
      before['supersededIn'] = n
      section(file, 'suspensions').push({
        ...before,
        recordedIn: n,
        supersedes: before['recordedIn'],
        supersededIn: undefined,
        reason: 'said in other words',
      })
    }
    expect(doubtsOf(KINDS, [corrected])).toEqual([])
    const lifted: Change = (file) => {
      const last = section(file, 'entries').length
      fact(file, 'lifts', 'tomo-lift')['supersededIn'] = last - 1
      section(file, 'lifts').push({
        ...fact(file, 'lifts', 'tomo-lift'),
        id: 'new-lift',
        recordedIn: last,
        supersededIn: undefined,
      })
    }
    expect(doubtsOf(KINDS, [again({}), lifted])).toEqual([])
  })

  it('[PR28] words whose meaning the holder said, in whatever spelling', () => {
    const by = textOf(fact(example(), 'people', 'tomo')['name']).toUpperCase()
    expect(doubtsOf(KINDS, [setIn('resolutions', 'tomo-slope-read', 'by', by)])).toMatchObject([
      { path: 'resolutions[0]', kind: 'resolved-by-holder', card: 'tomo-card', restriction: 'slope', by },
    ])
  })

  it('[PR28] words that were found to restrict nothing, while the card is in force', () => {
    const nothing = setIn('resolutions', 'tomo-slope-read', 'into', [])
    expect(doubtsOf(KINDS, [nothing])).toMatchObject([
      { kind: 'resolved-into-nothing', card: 'tomo-card', restriction: 'slope' },
    ])
    const printed = setIn('cards', 'tomo-card', 'lastDay', '2027-05-27')
    expect(doubtsOf(KINDS, [nothing, printed])).toEqual([])
    expect(doubtsOf(KINDS, [nothing, printed, extended('tomo-card', '2027-05-28')])).toHaveLength(1)
  })
})

describe('copies of books that ship', () => {
  const KINDS = ['differs-from-shipped', 'edition-not-shipped', 'shipped-part-missing'] as const
  const shipped = shippedBook()
  const edition = (file: Raw) => fact(file, 'editions', 'federal-crosscut-2016')
  const rule = (file: Raw, id: string): Raw => {
    const found = (edition(file)['rules'] as Raw[]).find((known) => known['id'] === id)
    if (found === undefined) throw new Error(`no rule ${id}`)
    return found
  }

  it('[PR29] the copy of the example is as it ships, in whatever order its keys stand', () => {
    const turned: Change = (file) => {
      for (const name of ['books', 'editions', 'extensions', 'cautions'])
        file[name] = section(file, name).map((record) => Object.fromEntries(Object.entries(record).reverse()))
    }
    expect(doubtsOf(KINDS, [turned], [shipped])).toEqual([])
  })

  it('[PR29] without the books nothing is compared', () => {
    expect(doubtsOf(KINDS, [(file) => (edition(file)['name'] = 'Other')])).toEqual([])
  })

  it('[PR29] an edition with another name, a rule changed and a rule of its own', () => {
    const change: Change = (file) => {
      edition(file)['name'] = 'Other'
      rule(file, 'card.days')['says'] = 'Other words.'
      rule(file, 'grant.bucking.A')['id'] = 'grant.bucking.ours'
    }
    expect(doubtsOf(KINDS, [change], [shipped])).toEqual([
      {
        path: 'editions[0]',
        id: 'federal-crosscut-2016',
        kind: 'differs-from-shipped',
        what: 'edition',
        book: 'federal-crosscut',
        parts: ['name', 'grant.bucking.ours', 'card.days', 'grant.bucking.A'],
      },
    ])
  })

  it('[PR29] an order that runs longer, a caution in other words, a book that says something else', () => {
    const order = textOf(section(example(), 'extensions')[0]?.['id'])
    const caution = textOf(section(example(), 'cautions')[0]?.['id'])
    const changes = [
      setIn('extensions', order, 'runsTo', '2199-12-31'),
      setIn('cautions', caution, 'text', 'Other words.'),
      setIn('books', 'federal-crosscut', 'says', 'Other words.'),
    ]
    expect(doubtsOf(KINDS, changes, [shipped, shipped])).toMatchObject([
      { id: 'federal-crosscut', what: 'book', parts: ['says'] },
      { id: 'federal-crosscut', what: 'book', parts: ['says'] },
      { id: order, what: 'order', parts: ['runsTo'] },
      { id: order, what: 'order', parts: ['runsTo'] },
      { id: caution, what: 'caution', parts: ['text'] },
    ])
  })

  it('[PR29] an edition that does not ship, and what is missing', () => {
    const change: Change = (file) => {
      part(edition(file), 'successor')
      edition(file)['lastDay'] = '2027-12-31'
      section(file, 'editions').push({ ...edition(file), id: 'ours-2028', firstDay: '2028-01-01' })
      Reflect.deleteProperty(fact(file, 'editions', 'ours-2028'), 'lastDay')
      file['extensions'] = []
    }
    expect(doubtsOf(KINDS, [change], [shipped])).toMatchObject([
      { id: 'federal-crosscut', kind: 'shipped-part-missing', what: 'order' },
      { id: 'federal-crosscut-2016', kind: 'differs-from-shipped', what: 'edition', parts: ['lastDay'] },
      { id: 'ours-2028', kind: 'edition-not-shipped', book: 'federal-crosscut' },
    ])
  })
})

function textOf(value: RawValue): string {
  if (typeof value !== 'string') throw new Error('the example has a text here')
  return value
}

function shippedBook(): BookFile {
  const read = readBookFile(
    readFileSync(new URL('../../../seeds/books/federal-crosscut.json', import.meta.url), 'utf8'),
  )
  if (!read.ok) throw new Error('the shipped book is broken')
  return read.value
}

describe('a stand-down', () => {
  const noLift: Change = (file) => (file['lifts'] = [])
  const kinds = ['stand-down-waits'] as const

  it('[PR19] that no official confirmed or lifted waits', () => {
    const waits = { path: 'suspensions[0]', kind: 'stand-down-waits', firstDay: '2027-05-26' }
    expect(doubtsOf(kinds, [noLift])).toMatchObject([waits])
  })

  it.each<[string, readonly Change[]]>([
    ['that was lifted', []],
    [
      'that was confirmed, and is a suspension',
      [noLift, setIn('suspensions', 'tomo-stand-down', 'form', 'suspension')],
    ],
  ])('[PR19] %s waits no more', (_name, changes) => {
    expect(doubtsOf(kinds, changes)).toEqual([])
  })
})

describe('a record that somebody says is wrong', () => {
  const said = {
    id: 'wren-says',
    recordedIn: 5,
    person: 'wren',
    section: 'certificates',
    record: 'wren-cpr',
    says: 'Invented.',
    day: '2027-05-03',
    answerBy: '2027-05-17',
  }
  const answered = { day: '2027-05-04', by: 'Invented', outcome: 'stands', says: 'Invented.' }

  it.each<[string, Raw, number]>([
    ['waits until it is answered', said, 1],
    ['waits no more once answered', { ...said, answered }, 0],
    ['says nothing of what is not there', { ...said, record: 'nothing' }, 0],
  ])('[PR19] %s', (_name, dispute, count) => {
    const found = doubtsOf(['said-to-be-wrong'], [(file) => (file['disputes'] = [dispute])])
    expect(found).toHaveLength(count)
    expect(found.every(({ id }) => id === 'wren-cpr')).toBe(true)
  })
})
