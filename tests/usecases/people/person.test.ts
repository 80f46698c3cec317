import { randomUUID } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Role } from '../../../lib/access/roles.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { writeWaiting } from '../../../lib/store/access-log.ts'
import { recordUuid } from '../../../lib/store/record-ids.ts'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { readPerson } from '../../../lib/usecases/people/person.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const UNIT_COORDINATOR = callerAs('ines', [{ role: 'crew-coordinator', unit: 'north-ashlar' }])
const WRZOS = 'p-lukasz-wrzos'

const read = (person: string, caller: Caller) =>
  callQuery(opened.runtime, readPerson, { input: { person } }, caller)

async function page(person: string, caller: Caller = MANAGER) {
  const outcome = await read(person, caller)
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value
}

describe('a person’s authority', () => {
  it('stands in strata: complexities over which they stand alike are one', async () => {
    const { strata } = await page(WRZOS)
    expect(
      strata.map(({ work, complexities, standing, through, level }) => [
        work.workKind,
        complexities.join(),
        standing,
        through,
        level?.level,
      ]),
    ).toEqual([
      ['bucking', 'least,moderate', 'independent', '2027-07-11', 'B'],
      ['bucking', 'high', 'training', '2027-07-11', 'B'],
      ['felling', 'least,moderate', 'independent', '2027-07-11', 'B'],
      ['felling', 'high', 'training', '2027-07-11', 'B'],
    ])
  })

  it('rests on cards and certificates; what stops it stands with its days, lifted days taken off', async () => {
    const { holdings } = await page(WRZOS)
    const last = (kind: string) => holdings.filter(({ what }) => what.kind === kind).map((one) => one.last)
    expect(last('card')).toEqual(['2028-04-13'])
    expect(holdings.find(({ what }) => what.kind === 'certificate' && what.subject === 'cpr')?.last).toBe(
      '2027-07-11',
    )
    const stopped = holdings.find(
      ({ what }) => what.kind === 'suspension' && what.suspension === 's-2027-wrzos',
    )
    expect(stopped?.runs).toEqual([{ first: '2027-01-18', last: '2027-01-31', kind: 'suspended' }])
  })

  it('a certificate that nobody has seen is on its line as not on record', async () => {
    const { holdings } = await page('p-kwabena-asare-boadi')
    const cpr = holdings.find(({ what }) => what.kind === 'certificate' && what.subject === 'cpr')
    expect(cpr?.runs.some(({ kind }) => kind === 'unknown')).toBe(true)
  })

  it('a card extended by an order runs as far as the order says', async () => {
    const { holdings } = await page('p-tobias-wennerlund')
    expect(holdings.filter(({ what }) => what.kind === 'card').map(({ last }) => last)).toContain(
      '2027-08-31',
    )
  })
})

describe('the history of a record', () => {
  it('holds what was corrected, with who closed it, when and why', async () => {
    const { histories } = await page(WRZOS)
    const cpr = histories.find(({ id }) => id === 'ct-lukasz-wrzos-cpr-2025')
    const why = 'corrected a CPR last day: the certificate says two years, three had been typed'
    const by = 'Inês Caldwell-Moraes, crew coordinator'
    expect(cpr?.versions).toHaveLength(2)
    const [now, before] = cpr?.versions ?? []
    expect(now).toMatchObject({ recorded: { n: 61, by, said: why }, corrects: 18 })
    expect(now?.closed).toBeUndefined()
    expect(now?.says).toContain('through 11 July 2027')
    expect(before).toMatchObject({
      recorded: { n: 18, by },
      closed: { n: 61, at: '2027-04-14T16:40:00.000Z', by, said: why },
    })
    expect(before?.says).toContain('through 11 July 2028')
  })

  it('is of this person alone, or of what stops or extends many', async () => {
    const { histories } = await page(WRZOS)
    const others = histories.filter(({ id }) => !id.includes('wrzos') && !id.startsWith('k-0431'))
    expect(others.map(({ section, id }) => `${section} ${id}`)).toEqual(['suspensions s-2025-wind'])
    expect(histories.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['s-2027-wrzos', 'l-2027-wrzos', 'm-lukasz-wrzos', 'k-0431-1']),
    )
  })

  it('holds the endings and resolutions of cards, designations, permissions and assignments', async () => {
    const sections = async (person: string) => (await page(person)).histories.map(({ section }) => section)
    expect(await sections('p-aurelio-brandt-nakai')).toContain('designations')
    expect(await sections('p-tavi-marrowby')).toContain('permissions')
    expect(await sections('p-chidinma-ezeigwe')).toContain('assignments')
    const { program } = await snapshotOf(opened.runtime.store)
    const ownerOf = (card: string) => program.cards.find(({ id }) => id === card)?.person ?? ''
    expect(program.endings.length + program.resolutions.length).toBeGreaterThan(2)
    for (const { card, id } of [...program.endings, ...program.resolutions]) {
      const found = (await page(ownerOf(card))).histories.map((one) => one.id)
      expect(found).toContain(id)
    }
  })

  it('[P9] tells a sawyer what an entry did only where it is about them alone', async () => {
    const own = await page(WRZOS, callerAs('anneli', [{ role: 'sawyer' }], WRZOS))
    const entries = own.histories.flatMap(({ versions }) => versions.map(({ recorded }) => recorded))
    const entry = (n: number) => entries.find((one) => one.n === n)
    expect(entry(61)?.said).toMatch(/^corrected a CPR/)
    // Everybody of the staff was recorded in it.
    expect(entry(4)).toMatchObject({ by: 'Inês Caldwell-Moraes, crew coordinator' })
    expect(entry(4)?.said).toBeUndefined()
    const all = await page(WRZOS)
    const told = all.histories.flatMap(({ versions }) => versions.map(({ recorded }) => recorded))
    expect(told.find((one) => one.n === 4)?.said).toBe('entered the staff of the three units')
  })
})

describe('an age', () => {
  const HARJUNPAA = 'p-tuuli-harjunpaa'
  const CORPS = callerAs('solvei', [{ role: 'crew-coordinator', organisation: 'halden-youth-corps' }])

  it.each([
    ['the person', callerAs('anneli', [{ role: 'sawyer' }], HARJUNPAA), { kind: 'born', day: '2010-10-03' }],
    ['who manages the program', MANAGER, { kind: 'born', day: '2010-10-03' }],
    ['a coordinator, of a minor', CORPS, { kind: 'of-age-from', day: '2028-10-03' }],
    [
      'an official, of a minor',
      callerAs('petra', [{ role: 'certifying-official' }]),
      { kind: 'of-age-from', day: '2028-10-03' },
    ],
  ])('is told to %s', async (_who, caller, age) => {
    expect((await page(HARJUNPAA, caller)).age).toEqual(age)
  })

  it('[P9] of an adult a coordinator is told nothing more, anywhere on the page', async () => {
    const told = await page(WRZOS, UNIT_COORDINATOR)
    expect(told.age).toEqual({ kind: 'of-age' })
    const whole = JSON.stringify({ ...told, names: undefined })
    expect(whole).not.toMatch(/1988|2006-02-11|11 February/)
    expect(JSON.stringify(await page(WRZOS))).toContain('1988-02-11')
  })

  it('[P9] of a minor a coordinator is not told the birth date itself', async () => {
    const told = await page(HARJUNPAA, CORPS)
    expect(JSON.stringify({ ...told, names: undefined })).not.toMatch(/2010-10-03|3 October 2010/)
  })

  it('attested instead of kept is told with who attested it, while it decides', async () => {
    const caller = callerAs('solvei', [{ role: 'crew-coordinator', organisation: 'halden-youth-corps' }])
    expect((await page('p-ilke-dauwens', caller)).age).toEqual({
      kind: 'of-age-from',
      day: '2027-07-02',
      attestedBy: 'Brendan Achterberg, Halden Youth Corps',
    })
  })
})

type Granted = { role: Role; unit?: string; organisation?: string }
const OWN = 'p-anneli-rautavuoma'
const OTHER_UNIT = 'p-siobhan-o-briain'
const matrix: { granted: Granted; own: boolean; sameUnit: boolean; otherUnit: boolean }[] = [
  { granted: { role: 'sawyer' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'crew-lead' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'instructor' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'evaluator' }, own: true, sameUnit: false, otherUnit: false },
  { granted: { role: 'filer' }, own: true, sameUnit: false, otherUnit: false },
  {
    granted: { role: 'crew-coordinator', unit: 'north-ashlar' },
    own: true,
    sameUnit: true,
    otherUnit: false,
  },
  {
    granted: { role: 'certifying-official', unit: 'north-ashlar' },
    own: true,
    sameUnit: true,
    otherUnit: false,
  },
  { granted: { role: 'program-manager' }, own: true, sameUnit: true, otherUnit: true },
]

describe('whose record a role may read', () => {
  it.each(matrix)(
    '[P9] $granted.role: own $own, own unit $sameUnit, other unit $otherUnit',
    async (granted) => {
      const caller = callerAs('anneli', [granted.granted], OWN)
      for (const [person, may] of [
        [OWN, granted.own],
        [WRZOS, granted.sameUnit],
        [OTHER_UNIT, granted.otherUnit],
      ] as const) {
        expect((await read(person, caller)).kind, person).toBe(may ? 'done' : 'not-found')
      }
    },
  )

  it('[P9] an auditor reads nobody’s, not even one that would be their own', async () => {
    expect(await read(OWN, callerAs('anneli', [{ role: 'auditor' }], OWN))).toEqual({ kind: 'forbidden' })
  })

  it('[P9] somebody who is not there is answered like somebody out of reach', async () => {
    const sawyer = callerAs('anneli', [{ role: 'sawyer' }], OWN)
    expect(await read('p-nobody-at-all', sawyer)).toEqual(await read(WRZOS, sawyer))
  })

  it('[P9] each look is one line of the log with its subject, and a refusal is one without', async () => {
    const { prisma } = opened.runtime.store
    const subject = recordUuid('people', WRZOS)
    const looked = { useCase: 'people/person', outcome: 'looked', subject }
    const refused = { useCase: 'people/person', outcome: 'refused', reason: 'not-found' }
    await writeWaiting(opened.runtime.store)
    const [looks, refusals] = await Promise.all([
      prisma.accessLog.count({ where: looked }),
      prisma.accessLog.count({ where: refused }),
    ])
    await page(WRZOS)
    await read(WRZOS, callerAs('anneli', [{ role: 'sawyer' }], OWN))
    await read(`p-${randomUUID()}`, MANAGER)
    await writeWaiting(opened.runtime.store)
    expect(await prisma.accessLog.count({ where: looked })).toBe(looks + 1)
    expect(await prisma.accessLog.count({ where: refused })).toBe(refusals + 2)
  })
})
