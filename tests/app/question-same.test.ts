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
import { watchedPage, type WatchedPage } from './watched-page.ts'

let kerfbook: Kerfbook
let browser: Browser
let watched: WatchedPage
beforeAll(async () => {
  ;[kerfbook, browser] = await Promise.all([startKerfbook(), openBrowser()])
  watched = await watchedPage(browser, kerfbook.address)
  await signInAs(watched.page, 'marit')
}, 400_000)
afterAll(async () => {
  await browser.close()
  await kerfbook.stop()
})

/** All twenty in the long run; else each fifth, stated work and items among them. */
const QUESTIONS = twentyQuestions()
  .map((asked, at) => ({ number: at + 1, asked }))
  .filter(({ number }) => process.env['KERFBOOK_LONG'] === '1' || number % 5 === 1 || number === 20)

/** One person as the page shows them: their group, and all that the row says. */
type Shown = { group: string; says: string; held: string }

/** Everybody on the page, by name. */
async function shownOn(page: Page): Promise<Map<string, Shown>> {
  const shown = await page.evaluate(() =>
    [...document.querySelectorAll('section.group')].flatMap((section) => {
      const group = section.id.replace('answer-', '')
      const text = (element: Element | null) => (element?.textContent ?? '').replaceAll(/\s+/g, ' ').trim()
      return [
        ...[...section.querySelectorAll('table.answers > tbody > tr')].map((row) => ({
          name: text(row.querySelector('th bdi')),
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
  )
  return new Map(shown.map(({ name, ...rest }) => [name, rest]))
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

describe('the page answers like the command line, for every person of the demonstration', () => {
  it.each(QUESTIONS)('question $number', async ({ asked }) => {
    const words = ['ask', DEMO, ...commandOfQuestion(asked), ...DEMO_DAY]
    const json = JSON.parse(answered(...words, '--json')) as AnswerJson
    const reasons = reasonsOf(answered(...words))
    const { page } = watched
    await page.goto(`${addressOfQuestion(asked)}&rows=1000`)
    const shown = await shownOn(page)
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
    const { page } = watched
    await page.goto(addressOfQuestion(asked))
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'JSON' }).click()
    const stream = await (await download).createReadStream()
    let text = ''
    for await (const part of stream) text += String(part)
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
