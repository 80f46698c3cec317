import { afterAll, beforeAll, expect, it } from 'vitest'
import { latestEntry, recordsAt } from '../../lib/core/program/known.ts'
import { RECORD_SECTIONS } from '../../lib/usecases/records/record-kinds.ts'
import { dayText } from '../../lib/wording/days.ts'
import { demo } from '../seeds/demo.ts'
import { cookiesOf } from './accounts-of-each-role.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'

let kerfbook: Kerfbook
let cookies: ReadonlyMap<string, string>
beforeAll(async () => {
  kerfbook = await startKerfbook()
  cookies = await cookiesOf(kerfbook, ['ines', 'solvei'])
}, 400_000)
afterAll(() => kerfbook.stop())

const known = recordsAt(demo, latestEntry(demo))
const births = known.people.flatMap(({ birthDate }) => (birthDate === undefined ? [] : [birthDate]))

/** Each coordinator with those they coordinate: of a unit, and of a partner. */
const membersOf = (field: 'unit' | 'organisation', id: string) => [
  ...new Set(known.memberships.filter((one) => one[field] === id).map(({ person }) => person)),
]
const COORDINATORS = [
  ['ines', membersOf('unit', 'quill-river')],
  ['solvei', membersOf('organisation', 'lantern-creek-volunteers')],
] as const

/** Pages that they open: lists, forms, everybody of theirs, with what each record says. */
const pagesOf = (people: readonly string[]) => [
  '/',
  '/people',
  '/people/ahead',
  '/people/new',
  '/records',
  ...RECORD_SECTIONS.map(
    (section) => `/records/${section.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`,
  ),
  ...people.flatMap((person) => [
    `/people/${person}`,
    `/records/people/${person}`,
    `/records/people/${person}/correct`,
  ]),
  '/answer.csv?work=bucking&across=18&complexity=least&saw=crosscut&first=2027-05-03&last=2027-05-03&hands=two',
  '/answer.json?work=bucking&across=18&complexity=least&saw=crosscut&first=2027-05-03&last=2027-05-03&hands=two',
]

it.each(COORDINATORS)(
  'no page that the coordinator %s may open holds a birth date or a score, its source included',
  async (name, people) => {
    expect(births.length).toBeGreaterThan(5)
    expect(people.length).toBeGreaterThan(5)
    // Days that the record holds for another reason are no birth dates.
    const other = JSON.stringify({ ...demo, people: [] })
    const looked = births.filter((day) => !other.includes(day))
    expect(looked.length).toBeGreaterThan(5)
    const found: string[] = []
    const cookie = cookies.get(name) ?? ''
    const pages = pagesOf(people)
    let shown = 0
    for (const page of pages) {
      const answer = await fetch(`${kerfbook.address}${page}`, { headers: { cookie }, redirect: 'manual' })
      const source = await answer.text()
      if (answer.status !== 200) continue
      shown++
      for (const day of looked)
        if (source.includes(day) || source.includes(dayText(day))) found.push(`${page}: ${day}`)
      if (/birthDate"?:\s*"|\bscores?\b|\bpoints\b/i.test(source)) found.push(`${page}: a score`)
    }
    expect(found).toEqual([])
    expect(shown).toBeGreaterThan(pages.length / 2)
  },
  200_000,
)

it('of a minor they see from which day they are of age, where it decides', async () => {
  const cookie = cookies.get('solvei') ?? ''
  const answer = await fetch(`${kerfbook.address}/people/p-tavi-marrowby`, { headers: { cookie } })
  const source = await answer.text()
  expect(source).toContain('12 July 2029')
  expect(source).not.toContain('12 July 2011')
})
