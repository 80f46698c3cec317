import { randomUUID } from 'node:crypto'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { AnswerJson } from '../../lib/core/authority/answer.schema.ts'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import { dayText } from '../../lib/wording/days.ts'
import { addressOfQuestion, commandOfQuestion } from '../builders/question-addresses.ts'
import { twentyQuestions } from '../builders/twenty-questions.ts'
import { answered, DEMO, DEMO_DAY } from '../cli/command-line.ts'
import { openBrowser } from './chromium.ts'
import { startKerfbook, type Kerfbook } from './kerfbook.ts'
import { signInAs } from './signed-in.ts'
import { watchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
/** Reads what was sent; nothing of it is shown, run or loaded. */
let reader: Page
let cookie: string
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook(), openBrowser()])
  const { page } = await watchedPage(browser, kerfbook.address)
  await signInAs(page, 'marit')
  const cookies = await page.context().cookies()
  cookie = cookies.map(({ name, value }) => `${name}=${value}`).join('; ')
  await page.goto('about:blank')
  reader = page
}, 400_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

const QUESTIONS = twentyQuestions().map((asked, at) => ({ number: at + 1, asked }))

/** A crew with everything in it: on their own, under somebody, in training, not on record, and changing within the days. */
const CREW = 'p-mbali-kamabaso,p-siobhan-o-briain,p-wulandari,p-lukasz-wrzos,p-pilar-wetherlam'

/** What the server sends for an address of a page. */
async function sentFor(address: string): Promise<string> {
  const answer = await fetch(`${kerfbook.address}${address}`, { headers: { cookie } })
  expect(answer.status).toBe(200)
  return answer.text()
}

/** One person as the page shows them: their group, and all that the row says. */
type Shown = { group: string; says: string; held: string }

/** Everybody on a page, by name, and what it says of the crew. */
async function shownIn(html: string): Promise<{ people: Map<string, Shown>; crew: string[] }> {
  const { people, crew } = await reader.evaluate((sent) => {
    const parsed = new DOMParser().parseFromString(sent, 'text/html')
    const text = (element: Element | null) => (element?.textContent ?? '').replaceAll(/\s+/g, ' ').trim()
    return {
      people: [...parsed.querySelectorAll('section.group')].flatMap((section) => {
        const group = section.querySelector('div[id^="answer-"]')?.id.replace('answer-', '') ?? ''
        return [
          ...[...section.querySelectorAll('table.answers > tbody > tr')].map((row) => ({
            name: text(row.querySelector('th .answered-for')),
            group,
            says: text(row),
            held: text(row.querySelector('.holds .entry')),
          })),
          ...[...section.querySelectorAll('.cardless li')].map((item) => ({
            name: text(item),
            group,
            says: text(item.closest('details')),
            held: '',
          })),
        ]
      }),
      crew: [...parsed.querySelectorAll('.crew-answer :is(ul > li, ol p)')].map(text),
    }
  }, html)
  return { people: new Map(people.map(({ name, ...rest }) => [name, rest])), crew }
}

/** What the text of the command line says of the company. */
function crewOf(text: string): string[] {
  const [, after = ''] = text.split('\nThe company: who supervises whom\n')
  return (after.split('\n\n')[0] ?? '').split('\n').map((line) => line.trim())
}

/** What the text of the command line says of each person: their reasons, without rule and mark. */
function reasonsOf(text: string): Map<string, string[]> {
  const reasons = new Map<string, string[]>()
  let person = ''
  for (const line of text.split('\n')) {
    if (/^ {2}\S/.test(line)) person = line.trim()
    const reason = /^ {4,6}- (.*?)(?: \[[^\]]*\])?$/.exec(line)?.[1]
    if (reason !== undefined) reasons.set(person, [...(reasons.get(person) ?? []), reason])
  }
  return reasons
}

/** The group of an answer of the published format. */
function groupOf({ standing, supervision }: AnswerJson['answers'][number]): string {
  return standing === 'supervised' ? (supervision ?? '') : standing
}

describe('the page says of a crew what the command line says of a company', () => {
  it.each(QUESTIONS)('question $number', async ({ asked }) => {
    const text = answered('ask', DEMO, ...commandOfQuestion(asked), ...DEMO_DAY, '--company', CREW)
    const { crew } = await shownIn(await sentFor(`${addressOfQuestion(asked)}&crew=${CREW}`))
    expect(crew.length).toBeGreaterThan(1)
    expect(crew).toEqual(crewOf(text))
  })
})

describe('the page answers like the command line, for every person of the demonstration', () => {
  it.each(QUESTIONS)('question $number', async ({ asked }) => {
    const words = ['ask', DEMO, ...commandOfQuestion(asked), ...DEMO_DAY]
    const json = JSON.parse(answered(...words, '--json')) as AnswerJson
    const reasons = reasonsOf(answered(...words))
    const { people: shown } = await shownIn(await sentFor(`${addressOfQuestion(asked)}&rows=10000&open=all`))
    expect(shown.size).toBe(json.answers.length)
    expect(json.answers.length).toBeGreaterThan(50)
    for (const answer of json.answers) {
      // Two who share a name stand with their ids.
      const name = shown.has(answer.name) ? answer.name : `${answer.name} (${answer.person})`
      const row = shown.get(name)
      expect(row?.group, name).toBe(groupOf(answer))
      for (const reason of reasons.get(name) ?? []) expect(row?.says, name).toContain(reason)
      if (answer.spans.length === 1 && answer.holdsThrough !== 'open' && row?.held !== '') {
        expect(row?.held, name).toBe(`through ${dayText(answer.holdsThrough as CalendarDate)}`)
      }
    }
    expect(reasons.size).toBeGreaterThan(5)
  })

  it.each(QUESTIONS)('question $number taken away as data is the same data', async ({ asked }) => {
    const json = JSON.parse(
      answered('ask', DEMO, ...commandOfQuestion(asked), ...DEMO_DAY, '--json'),
    ) as AnswerJson
    const answer = await fetch(`${kerfbook.address}${addressOfQuestion(asked, '/answer.json')}`, {
      method: 'POST',
      headers: {
        cookie,
        origin: kerfbook.address,
        'content-type': 'application/x-www-form-urlencoded',
      },
      body: new URLSearchParams({ id: randomUUID() }).toString(),
    })
    expect(answer.status).toBe(200)
    const text = await answer.text()
    const taken = JSON.parse(text) as AnswerJson
    // The database has one entry more, for the accounts; and it is asked about everybody by name.
    const { persons: _persons, ...question } = taken.question
    expect({ ...taken, question, answers: byPerson(taken), knownAt: json.knownAt }).toEqual({
      ...json,
      answers: byPerson(json),
    })
  })
})

/** Answers stand in the order in which people are on record, which a file and a database need not share. */
function byPerson({ answers }: AnswerJson): AnswerJson['answers'] {
  return [...answers].sort((left, right) => left.person.localeCompare(right.person))
}
