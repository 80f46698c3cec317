import { randomUUID } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ROLES } from '../../lib/access/roles.ts'
import { readProgram } from '../../lib/core/program/read-program.ts'
import { REPOSITORY } from '../../lib/platform/database/data-folder.ts'
import { cookiesOf, openAccounts } from './accounts-of-each-role.ts'
import { ADOPT, CONFIRM, expectedAt, UNIT_OF_INES, VOLUNTEER, type Who } from './expected-by-role.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'

// Of the demonstration: one account for each of its roles; then an account for each other role, and one without any.
const OWN = 'p-kaoru-minase'
const MORE = [
  { name: 'of-a-lead', person: OWN, role: 'crew-lead' },
  { name: 'of-an-evaluator', person: OWN, role: 'evaluator' },
  { name: 'of-a-filer', person: OWN, role: 'filer' },
  { name: 'of-an-auditor', person: OWN, role: 'auditor' },
  { name: 'of-nobody', person: OWN },
] as const
const WHO: readonly Who[] = [
  { name: 'marit', role: 'program-manager', reach: 'everybody' },
  { name: 'petra', role: 'certifying-official', reach: 'everybody' },
  { name: 'ines', role: 'crew-coordinator', reach: 'everybody' },
  { name: 'solvei', role: 'crew-coordinator', reach: 'volunteers' },
  { name: 'siobhan', role: 'instructor', reach: 'own', person: 'p-siobhan-o-briain' },
  { name: 'anneli', role: 'sawyer', reach: 'own', person: 'p-anneli-rautavuoma' },
  { name: 'of-a-lead', role: 'crew-lead', reach: 'own', person: OWN },
  { name: 'of-an-evaluator', role: 'evaluator', reach: 'own', person: OWN },
  { name: 'of-a-filer', role: 'filer', reach: 'own', person: OWN },
  { name: 'of-an-auditor', role: 'auditor', reach: 'nobody', person: OWN },
  { name: 'of-nobody', role: 'none', reach: 'nobody', person: OWN },
]

const QUESTION =
  'work=felling&across=22&complexity=moderate&saw=crosscut&first=8+Jul+2027&last=15+Jul+2027&place=north-ashlar'
const OTHER_UNIT = 'p-lukasz-wrzos'

/** The routes by the file of each, with the addresses at which they are visited. */
const ROUTES: Readonly<Record<string, readonly string[]>> = {
  'people/ahead/table/[form]/route.ts': ['/people/ahead/table/csv'],
  'journal/table/[form]/route.ts': ['/journal/table/text'],
  '(accounts)/accounts/table/[form]/route.ts': ['/accounts/table/xlsx'],
  'people/table/[form]/route.ts': ['/people/table/csv', '/people/table/text?sort=unit'],
  'records/[kind]/table/[form]/route.ts': ['/records/cards/table/text', '/records/places/table/xlsx'],
  '(program)/program/file/page.tsx': ['/program/file'],
  '(program)/program/file/program.json/route.ts': ['/program/file/program.json'],
  'my/page.tsx': ['/my'],
  'my/looked/page.tsx': ['/my/looked'],
  'my/everything.json/route.ts': ['/my/everything.json'],
  'sheets/page.tsx': ['/sheets'],
  'sheets/[sheet]/page.tsx': ['/sheets/00000000-0000-4000-8000-000000000000'],
  'sheets/[sheet]/cannot.csv/route.ts': ['/sheets/00000000-0000-4000-8000-000000000000/cannot.csv'],
  'sheets/records/[kind]/table/[form]/route.ts': ['/sheets/records/hitches/table/csv'],
  'sheets/undo/[entry]/page.tsx': ['/sheets/undo/1'],
  '(authority)/page.tsx': [
    '/',
    `/?${QUESTION}`,
    `/?${QUESTION}&person=${OTHER_UNIT}`,
    '/?item=i-c-01-log-1&saw=crosscut',
  ],
  '(authority)/answer.csv/route.ts': [`POST /answer.csv?${QUESTION}`],
  '(authority)/answer.xlsx/route.ts': [`POST /answer.xlsx?${QUESTION}`],
  '(authority)/answer.json/route.ts': [`POST /answer.json?${QUESTION}`],
  '(accounts)/accounts/page.tsx': ['/accounts'],
  '(accounts)/accounts/new/page.tsx': ['/accounts/new'],
  '(accounts)/accounts/[id]/page.tsx': ['/accounts/ines'],
  '(accounts)/accounts/[id]/end/page.tsx': ['/accounts/ines/end'],
  '(accounts)/accounts/[id]/link/page.tsx': ['/accounts/ines/link'],
  '(accounts)/accounts/[id]/open-again/page.tsx': ['/accounts/not-there/open-again'],
  '(accounts)/accounts/[id]/roles/new/page.tsx': ['/accounts/ines/roles/new'],
  '(accounts)/accounts/[id]/roles/[role]/page.tsx': ['/accounts/ines/roles/not-there'],
  '(accounts)/accounts/me/page.tsx': ['/accounts/me'],
  '(accounts)/accounts/me/password/page.tsx': ['/accounts/me/password'],
  '(accounts)/set-password/[code]/page.tsx': ['/set-password/no-such-code'],
  '(accounts)/sign-in/page.tsx': ['/sign-in'],
  '(program)/begin/[code]/page.tsx': ['/begin/no-such-code'],
  '(program)/program/page.tsx': ['/program'],
  '(program)/program/first-day/page.tsx': ['/program/first-day'],
  'api/auth/[...nextauth]/route.ts': ['/api/auth/session'],
  'journal/page.tsx': ['/journal'],
  'journal/[n]/page.tsx': ['/journal/2'],
  'kept-form/page.tsx': ['/kept-form', '/kept-form?kept=no-such-key'],
  'parts/page.tsx': ['/parts'],
  'people/page.tsx': ['/people', '/people?name=wrzos'],
  'people/[id]/erase/page.tsx': [`/people/${UNIT_OF_INES}/erase`],
  'people/[id]/page.tsx': [`/people/${UNIT_OF_INES}`, `/people/${OTHER_UNIT}`, `/people/${VOLUNTEER}`],
  'people/ahead/page.tsx': ['/people/ahead', '/people/ahead?days=457&kind=card'],
  'people/new/page.tsx': ['/people/new'],
  'records/page.tsx': ['/records'],
  'records/[kind]/page.tsx': [
    ...['cards', 'certificates', 'suspensions', 'assignments'].map((kind) => `/records/${kind}`),
    ...['places', 'ratings', 'raises', 'hitches', 'placements'].map((kind) => `/records/${kind}`),
  ],
  'records/[kind]/new/page.tsx': ['/records/certificates/new', '/records/suspensions/new'],
  'records/[kind]/[id]/page.tsx': [
    `/records/people/${UNIT_OF_INES}`,
    `/records/people/${OTHER_UNIT}`,
    '/records/hitches/h-01',
  ],
  'records/[kind]/[id]/correct/page.tsx': [`/records/people/${UNIT_OF_INES}/correct`],
  'records/[kind]/[id]/withdraw/page.tsx': [`/records/people/${UNIT_OF_INES}/withdraw`],
  'records/[kind]/[id]/notice/page.tsx': ['/records/suspensions/not-there/notice'],
  'records/[kind]/[id]/confirm/page.tsx': ['/records/suspensions/not-there/confirm'],
  'records/[kind]/[id]/worksheet/page.tsx': ['/records/items/i-c-01-log-1/worksheet'],
  'records/[kind]/[id]/wrong/page.tsx': ['/records/suspensions/not-there/wrong'],
  'records/[kind]/[id]/answer/page.tsx': ['/records/suspensions/not-there/answer'],
  'stand-down/page.tsx': [
    '/stand-down',
    `/stand-down?person=${UNIT_OF_INES}`,
    `/stand-down?person=${OTHER_UNIT}`,
  ],
  'rulebooks/page.tsx': ['/rulebooks'],
  'rulebooks/[edition]/page.tsx': ['/rulebooks/federal-crosscut-2016'],
  'rulebooks/[edition]/confirm/[rule]/page.tsx': [CONFIRM],
  'rulebooks/[edition]/against/[other]/page.tsx': [
    '/rulebooks/federal-crosscut-2016/against/cooperator-crosscut-1',
  ],
  'rulebooks/shipped/[book]/page.tsx': ['/rulebooks/shipped/federal-crosscut'],
  'rulebooks/shipped/[book]/adopt/page.tsx': [ADOPT],
  'rulebooks/shipped/[book]/against/[edition]/page.tsx': [
    '/rulebooks/shipped/federal-crosscut/against/federal-crosscut-2016',
  ],
}

const AS_PARTS = [
  '/',
  `/?${QUESTION}`,
  '/people',
  `/people/${OTHER_UNIT}`,
  `/people/${VOLUNTEER}`,
  '/journal/2',
  CONFIRM,
]

let kerfbook: Kerfbook
let cookies: ReadonlyMap<string, string>
beforeAll(async () => {
  kerfbook = await startKerfbook()
  await openAccounts(kerfbook, MORE)
  cookies = await cookiesOf(
    kerfbook,
    WHO.map(({ name }) => name),
  )
}, 400_000)
afterAll(() => kerfbook.stop())

const read = readProgram(readFileSync(join(REPOSITORY, 'seeds/demo.json'), 'utf8'))
if (!read.ok) throw new Error('the demonstration cannot be read')
const { people, memberships } = read.value
const volunteers = new Set(
  memberships
    .filter(({ organisation }) => organisation === 'lantern-creek-volunteers')
    .map(({ person }) => person),
)

/** Gets an address, or sends the form of a file to it, and follows nothing. */
async function answerTo(address: string, cookie: string) {
  const isForm = address.startsWith('POST ')
  const answer = await fetch(`${kerfbook.address}${address.replace(/^POST /, '')}`, {
    method: isForm ? 'POST' : 'GET',
    redirect: 'manual',
    headers: { cookie },
    ...(isForm ? { body: new URLSearchParams({ id: randomUUID() }) } : {}),
  })
  return { status: answer.status, text: await answer.text() }
}

/** A page as the framework asks for it from a page that is open: no HTML, but what the browser makes it of. */
async function partsOf(address: string, cookie: string) {
  // The framework leads on to the address under which the parts are known.
  const answer = await fetch(`${kerfbook.address}${address}`, { headers: { cookie, rsc: '1' } })
  return { type: answer.headers.get('content-type'), text: await answer.text() }
}

const TEACHERS = ['Siobhán Ó Briain', 'Ifeoma Castellane', 'Tobiah Renquist']

/** Whose name or id stands in the answer to an address, among those out of reach; not whom the address itself names. */
function leaked(text: string, address: string, { reach, person: own }: Who): string[] {
  if (reach === 'everybody') return []
  const plain = text.replaceAll('&#x27;', "'").replaceAll('&amp;', '&')
  const isReached = ({ id }: { id: string }) => id === own || (reach === 'volunteers' && volunteers.has(id))
  const wordsOf = (some: typeof people) => some.flatMap(({ id, name }) => [id, name])
  // Two people may share a name, and the id of one may begin like that of another.
  // Whoever is named in one's own record, as who teaches or has taught, stands in it.
  const teachers = address.startsWith('/my') ? people.filter(({ name }) => TEACHERS.includes(name)) : []
  const known = wordsOf([...people.filter(isReached), ...teachers])
  return wordsOf(people.filter((one) => !isReached(one) && !teachers.includes(one))).filter(
    (word) => plain.includes(word) && !address.includes(word) && !known.some((other) => other.includes(word)),
  )
}

describe('every route and every role', () => {
  it('[P9] no route is left out', () => {
    const files = readdirSync(join(REPOSITORY, 'app'), { recursive: true, encoding: 'utf8' })
    const routes = files.filter((file) => /(^|\/)(page\.tsx|route\.ts)$/.test(file))
    expect(routes.sort()).toEqual(Object.keys(ROUTES).sort())
    expect(new Set(WHO.map(({ role }) => role))).toEqual(new Set([...ROLES, 'none']))
  })

  it.each(WHO)(
    '[P9] $role, $name, is let in where the role allows it, and reads of nobody else',
    async (who) => {
      const cookie = cookies.get(who.name) ?? ''
      for (const address of Object.values(ROUTES).flat()) {
        const { status, text } = await answerTo(address, cookie)
        expect.soft(status, address).toBe(expectedAt(address, who))
        expect.soft(leaked(text, address, who), address).toEqual([])
      }
    },
  )

  it.each(WHO)('[P9] $role, $name, reads no more where a page is asked for as its parts', async (who) => {
    const cookie = cookies.get(who.name) ?? ''
    for (const address of AS_PARTS) {
      const { type, text } = await partsOf(address, cookie)
      expect.soft(type, address).toBe('text/x-component')
      expect.soft(leaked(text, address, who), address).toEqual([])
    }
  })

  it('[P9] who is not signed in is sent to sign in, and reads of nobody', async () => {
    const nobody: Who = { name: 'nobody', role: 'none', reach: 'nobody' }
    for (const address of Object.values(ROUTES).flat()) {
      const { status, text } = await answerTo(address, '')
      expect.soft(status, address).toBe(expectedAt(address, nobody))
      expect.soft(leaked(text, address, nobody), address).toEqual([])
    }
  })
})
