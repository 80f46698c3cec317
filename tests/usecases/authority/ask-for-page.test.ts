import { isDeepStrictEqual } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { snapshotOf } from '../../../lib/store/snapshot.ts'
import { askForPage, type AnswerForPage } from '../../../lib/usecases/authority/ask-for-page.ts'
import { askQuestion } from '../../../lib/usecases/authority/ask.ts'
import type { AskedQuestion } from '../../../lib/usecases/authority/question.schema.ts'
import { peopleToAsk } from '../../../lib/usecases/authority/people-to-ask.ts'
import { whatToAsk } from '../../../lib/usecases/authority/what-to-ask.ts'
import type { Caller } from '../../../lib/usecases/door/caller.ts'
import { callQuery } from '../../../lib/usecases/door/call-query.ts'
import { GROUPS } from '../../../lib/wording/groups.ts'
import { callerAs } from '../../builders/call-any.ts'
import { openDemoRuntime, type TestRuntime } from '../../builders/test-runtime.ts'
import { twentyQuestions } from '../../builders/twenty-questions.ts'

let opened: TestRuntime
beforeAll(async () => {
  opened = await openDemoRuntime()
})
afterAll(() => opened.close())

const MANAGER = callerAs('marit', [{ role: 'program-manager' }])
const UNIT_COORDINATOR = callerAs('ines', [{ role: 'crew-coordinator', unit: 'quill-river' }])
const SAWYER = callerAs('anneli', [{ role: 'sawyer' }], 'p-anneli-rautavuoma')

/** Felling at North Ashlar in July. */
const FELLING = {
  work: {
    workKind: 'felling',
    sawKind: 'crosscut',
    diameter: 22,
    complexity: 'moderate',
    place: 'north-ashlar',
  },
  first: '2027-07-08',
  last: '2027-07-15',
}

async function forPage(input: object, caller: Caller = MANAGER): Promise<AnswerForPage> {
  const outcome = await callQuery(opened.runtime, askForPage, { input }, caller)
  if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
  return outcome.value
}

const peopleOf = ({ groups }: AnswerForPage) =>
  groups.flatMap(({ rows, cardless }) => [...rows.map(({ answer }) => answer.person), ...cardless])

const rowsOf = ({ groups }: AnswerForPage) => groups.flatMap(({ rows }) => rows)

const EVERY_ROW = { every: true, but: [] }

describe('the answer for the page', () => {
  it.each(twentyQuestions().map((asked, at) => ({ number: at + 1, asked })))(
    'question $number: everybody stands once, in the group and with the answer of the whole answer',
    async ({ asked }: { asked: AskedQuestion }) => {
      const page = await forPage({ ...asked, rows: 1000 })
      const whole = await callQuery(opened.runtime, askQuestion, { input: asked }, MANAGER)
      if (whole.kind !== 'done') throw new Error(JSON.stringify(whole))
      const { answers, beside } = whole.value
      expect([...peopleOf(page)].sort()).toEqual(answers.map(({ person }) => person).sort())
      expect(page.groups.map(({ standing }) => standing)).toEqual([...GROUPS])
      const byPerson = new Map(answers.map((answer) => [answer.person, answer]))
      for (const { standing, count, rows, more, cardless } of page.groups) {
        expect(count).toBe(answers.filter((answer) => answer.standing === standing).length)
        expect(more).toBe(0)
        for (const { answer } of rows) {
          expect(answer.standing).toBe(standing)
          expect(answer).toEqual(byPerson.get(answer.person))
        }
        for (const person of cardless) {
          expect(byPerson.get(person)?.findings.map(({ kind }) => kind)).toEqual(['no-card'])
          expect(byPerson.get(person)?.remedies.sets).toEqual([])
        }
      }
      expect(page.beside).toEqual(beside)
    },
  )

  it('the chain of a row says every standing of its answer, and each record of it is told', async () => {
    const rows = rowsOf(await forPage({ ...FELLING, open: EVERY_ROW }))
    expect(rows.length).toBeGreaterThan(10)
    for (const { answer, opened: behind } of rows) {
      const { chain, records } = behind!
      const standings = new Set(chain.map(({ standing }) => standing))
      expect(standings).toEqual(new Set(answer.spans.map(({ standing }) => standing)))
      const named = chain.flatMap(({ met, findings }) =>
        [...met, ...findings].flatMap((step) => step.records),
      )
      for (const id of named) {
        expect(records?.get(id)?.length, id).toBeGreaterThan(0)
        for (const record of records?.get(id) ?? []) expect(record.statedAt).toBeDefined()
      }
    }
  })

  it('the chain of opened rows alone is looked for, and an id without a row opens nothing', async () => {
    const openOn = async (open?: object) =>
      rowsOf(await forPage({ ...FELLING, ...(open === undefined ? {} : { open }) }))
        .filter(({ opened: behind }) => behind !== undefined)
        .map(({ answer }) => answer.person)
    const all = rowsOf(await forPage(FELLING)).map(({ answer }) => answer.person)
    expect(await openOn()).toEqual([])
    expect(await openOn({ every: false, but: ['p-lukasz-wrzos', 'p-nobody', '<b>'] })).toEqual([
      'p-lukasz-wrzos',
    ])
    expect(await openOn(EVERY_ROW)).toEqual(all)
    expect(await openOn({ every: true, but: ['p-lukasz-wrzos'] })).toEqual(
      all.filter((person) => person !== 'p-lukasz-wrzos'),
    )
  })

  it.each(twentyQuestions().map((asked, at) => ({ number: at + 1, asked })))(
    'question $number: what speaks for a shut row is what speaks in its chain',
    async ({ asked }: { asked: AskedQuestion }) => {
      for (const { speaks, opened: behind } of rowsOf(await forPage({ ...asked, open: EVERY_ROW }))) {
        const inChain = behind?.chain.map(({ spokenBy }) => spokenBy) ?? []
        expect(speaks).toEqual(
          inChain.filter((one, at) => inChain.findIndex((other) => isDeepStrictEqual(one, other)) === at),
        )
      }
    },
  )

  it('a line is drawn around the days asked, and ends where the answer ends', async () => {
    const { groups, window } = await forPage(FELLING)
    expect(window).toEqual({ first: '2027-07-05', last: '2027-07-25' })
    const row = groups.flatMap(({ rows }) => rows).find(({ answer }) => answer.person === 'p-lukasz-wrzos')
    expect(row?.answer.holdsThrough).toBe('2027-07-11')
    expect(row?.runs[0]).toEqual({ kind: 'independent', first: '2027-07-05', last: '2027-07-11' })
  })

  it('shows as many rows of a group as are asked for, and counts the others', async () => {
    const all = await forPage(FELLING)
    const few = await forPage({ ...FELLING, rows: 2 })
    for (const [at, group] of few.groups.entries()) {
      const whole = all.groups[at]
      expect(group.count).toBe(whole?.count)
      expect(group.rows).toEqual(whole?.rows.slice(0, 2))
      expect(group.more).toBe(Math.max(0, (whole?.rows.length ?? 0) - 2))
    }
  })
})

describe('a crew', () => {
  const company = ['p-mbali-kamabaso', 'p-siobhan-o-briain', 'p-wulandari', 'p-lukasz-wrzos']

  it('is judged as the whole answer judges it, and changes no row', async () => {
    for (const persons of [undefined, ['p-lukasz-wrzos']]) {
      const asked = { ...FELLING, ...(persons === undefined ? {} : { persons }) }
      const whole = await callQuery(opened.runtime, askQuestion, { input: { ...asked, company } }, MANAGER)
      if (whole.kind !== 'done') throw new Error(JSON.stringify(whole))
      const page = await forPage({ ...asked, company })
      expect(page.crew?.days).toEqual(whole.value.company)
      expect(page.crew?.members.map(({ person }) => person)).toEqual(company)
      expect(page.groups).toEqual((await forPage(asked)).groups)
    }
    expect((await forPage(FELLING)).crew).toBeUndefined()
  })

  it('[P9] nobody out of reach comes along, and is answered like nobody', async () => {
    for (const person of ['p-lukasz-wrzos', 'p-nobody-at-all']) {
      const input = { ...FELLING, company: ['p-anneli-rautavuoma', person] }
      expect(await callQuery(opened.runtime, askForPage, { input }, SAWYER)).toEqual({ kind: 'not-found' })
    }
  })

  it('[P9] can be chosen from those alone whose standing the caller may read', async () => {
    const offered = async (caller: Caller) => {
      const outcome = await callQuery(opened.runtime, peopleToAsk, { input: {} }, caller)
      if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
      expect(outcome.value.count).toBe(outcome.value.people.length)
      return outcome.value.people.map(({ id }) => id).sort()
    }
    expect(await offered(SAWYER)).toEqual(['p-anneli-rautavuoma'])
    expect(await offered(MANAGER)).toEqual([...peopleOf(await forPage(FELLING))].sort())
  })
})

describe('who sees what', () => {
  it('[P9] a sawyer sees their own row, with its records', async () => {
    const page = await forPage({ ...FELLING, open: EVERY_ROW }, SAWYER)
    expect(peopleOf(page)).toEqual(['p-anneli-rautavuoma'])
    const [row] = rowsOf(page)
    expect(row?.opened?.records).toBeDefined()
  })

  it('[P9] somebody else’s id is answered like nobody’s', async () => {
    const ask = (person: string) =>
      callQuery(opened.runtime, askForPage, { input: { ...FELLING, persons: [person] } }, SAWYER)
    expect(await ask('p-lukasz-wrzos')).toEqual({ kind: 'not-found' })
    expect(await ask('p-nobody-at-all')).toEqual({ kind: 'not-found' })
  })

  it('[P9] who may read the standing and not the record sees ids and no words of it', async () => {
    const rows = rowsOf(await forPage({ ...FELLING, open: EVERY_ROW }, UNIT_COORDINATOR))
    for (const { isReadable, opened: behind } of rows) expect(behind?.records !== undefined).toBe(isReadable)
    const told = rows.filter(({ isReadable }) => isReadable).map(({ answer }) => answer.person)
    const { memberships } = (await snapshotOf(opened.runtime.store)).program
    const ofUnit = new Set(
      memberships.filter(({ unit }) => unit === 'quill-river').map(({ person }) => person),
    )
    expect(told.length).toBeGreaterThan(0)
    expect(told.length).toBeLessThan(rows.length)
    for (const person of told) expect(ofUnit.has(person), person).toBe(true)
  })

  it('what can be asked about names places and items, and nobody', async () => {
    const outcome = await callQuery(opened.runtime, whatToAsk, { input: {} }, SAWYER)
    if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome))
    expect(outcome.value.places.map(({ id }) => id)).toContain('north-ashlar')
    expect(outcome.value.items.length).toBeGreaterThan(5)
    expect(JSON.stringify(outcome.value)).not.toMatch(/"p-/)
  })
})
