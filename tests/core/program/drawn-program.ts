import fc from 'fast-check'
import { nameField } from '../../../lib/core/kernel/fields.schema.ts'
import { programSchema, type Program } from '../../../lib/core/program/program.schema.ts'
import type { Raw, RawValue } from './small-program.ts'

const rule = (kind: string, more: Raw = {}): Raw => ({
  id: kind,
  kind,
  source: 'invented',
  mark: 'program-default',
  says: 'Invented.',
  ...more,
})

/** The least that an edition may say. */
const RULES = [
  rule('card.needed'),
  rule('card.days'),
  rule('restriction'),
  rule('restriction.words'),
  rule('suspension'),
  rule('recognition', { books: [] }),
  rule('supervision', { cutsAtOnce: 1, ofAge: 18 }),
  rule('supervision.trainer', { roles: ['instructor'] }),
  rule('complexity.rated'),
  rule('complexity.provisional', { days: 180 }),
  rule('age.least', { sawKind: 'crosscut', years: 16 }),
]

const LEVELS = [{ level: 'B', rank: 1, name: 'B' }]

const name = fc.oneof(
  fc.constantFrom('Łukasz Wrzos', 'Siobhán Ó Briain', 'שולה', '"quoted" \\ back', '👷', 'x'.repeat(200)),
  fc
    .string({ unit: 'grapheme', minLength: 1, maxLength: 8 })
    .filter((text) => !text.includes('\uFFFD') && nameField.safeParse(text).success),
)

const days = fc.integer({ min: 0, max: 20_000 }).map((day) => {
  const date = new Date(Date.UTC(1990, 0, 1 + day))
  return date.toISOString().slice(0, 10)
})

const span = fc.tuple(days, days).map(([left, right]) => ({
  firstDay: left < right ? left : right,
  lastDay: left < right ? right : left,
}))

/** Versions of one fact: each recorded after the one before, which it corrects or only follows. */
function versions(entries: number, shape: fc.Arbitrary<Raw>): fc.Arbitrary<Raw[]> {
  const numbers = fc.uniqueArray(fc.integer({ min: 2, max: entries }), { minLength: 1, maxLength: 3 })
  return fc
    .tuple(numbers, fc.array(shape, { minLength: 3, maxLength: 3 }), fc.boolean(), fc.boolean())
    .map(([drawn, shapes, isCorrected, isWithdrawn]) => {
      const ordered = [...drawn].sort((left, right) => left - right)
      return ordered.map((recordedIn, at): Raw => {
        const next = ordered[at + 1]
        const before = ordered[at - 1]
        const isLast = next === undefined
        const end = isLast ? (isWithdrawn && recordedIn < entries ? entries : undefined) : next
        return {
          ...shapes[at],
          recordedIn,
          ...(end === undefined ? {} : { supersededIn: end }),
          ...(isCorrected && before !== undefined ? { supersedes: before } : {}),
        }
      })
    })
}

const facts = (entries: number, shape: fc.Arbitrary<Raw>, prefix: string): fc.Arbitrary<Raw[]> =>
  fc
    .array(versions(entries, shape), { maxLength: 2 })
    .map((drawn) =>
      drawn.flatMap((each, at) => each.map((version) => ({ ...version, id: `${prefix}-${at}` }))),
    )

const inches = fc.integer({ min: 1, max: 6400 }).map((sixteenths) => sixteenths / 16)

/** Small good programs: one tiny book, people, certificates, cards and logs, each in versions. */
export const drawnProgram: fc.Arbitrary<Program> = fc.integer({ min: 2, max: 8 }).chain((entries) => {
  const person = fc.record({ name, birthDate: fc.constant('1980-02-29') })
  const certificate = fc.record({
    person: fc.constant('anchor'),
    subject: fc.constantFrom('cpr', 'first-aid'),
    delivery: fc.constantFrom('in-person', 'online', 'not-stated'),
    seen: fc.boolean(),
    days: span,
  })
  const card = fc.record({
    person: fc.constant('anchor'),
    book: fc.constant('tiny'),
    workKinds: fc.constantFrom<RawValue[]>(['bucking'], ['bucking', 'felling'], 'not-stated'),
    sawKinds: fc.constant<RawValue>(['crosscut']),
    level: fc.constant('B'),
    days: span,
    restrictions: fc.array(
      inches.map((limit) => ({ kind: 'greatest-diameter', inches: limit })),
      { maxLength: 2 },
    ),
  })
  const item = fc.record({ name, workKind: fc.constantFrom('bucking', 'felling'), diameter: inches })
  const rating = fc.record({
    item: fc.constant('log'),
    complexity: fc.constantFrom('least', 'high', 'not-rated'),
    observations: fc.dictionary(fc.constantFrom('bind', 'lean', '7', 'a-b'), fc.constantFrom('none', 'side')),
    rater: fc.constant('anchor'),
    day: days,
    how: fc.constantFrom('on-site', 'photo'),
  })
  return fc
    .tuple(
      facts(entries, person, 'p'),
      facts(entries, certificate, 'c'),
      facts(entries, card, 'card'),
      facts(entries, item, 'i'),
      facts(entries, rating, 'r'),
    )
    .map(([people, certificates, cards, items, ratings]) => {
      const first = { recordedIn: 1 }
      return programSchema.parse({
        format: 'kerfbook-program/1',
        draft: true,
        invented: true,
        program: { id: 'drawn', name: 'Drawn', timeZone: 'America/Denver', book: 'tiny' },
        entries: Array.from({ length: entries }, (_, at) => ({
          n: at + 1,
          statedAt: `2050-01-0${at + 1}T12:00:00Z`,
          actor: 'Somebody',
          event: 'Something.',
        })),
        books: [{ ...first, id: 'tiny', name: 'Tiny', says: 'Invented.' }],
        editions: [
          {
            ...first,
            id: 'tiny-1',
            book: 'tiny',
            name: 'Tiny',
            says: 'Invented.',
            firstDay: '1990-01-01',
            levels: LEVELS,
            rules: RULES,
          },
        ],
        people: [{ ...first, id: 'anchor', name: 'Anchor' }, ...people],
        certificates: certificates.map(({ days: when, ...rest }) => ({ ...rest, ...(when as Raw) })),
        cards: cards.map(({ days: when, restrictions, ...rest }) => ({
          ...rest,
          number: rest['id'],
          line: 1,
          effectiveDay: (when as Raw)['firstDay'],
          lastDay: (when as Raw)['lastDay'],
          restrictions: (restrictions as Raw[]).map((restriction, at) => ({ ...restriction, id: `r-${at}` })),
        })),
        items: [{ ...first, id: 'log', name: 'Log', workKind: 'bucking', diameter: 12 }, ...items],
        ratings,
      })
    })
})
