import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { ask, openRecords } from '../../lib/core/authority/ask.ts'
import { besideAnswer } from '../../lib/core/authority/beside-answer.ts'
import { speakers, speakingCards } from '../../lib/core/authority/explain.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import { recordsAt } from '../../lib/core/program/known.ts'
import { readProgram } from '../../lib/core/program/read-program.ts'
import { answerRows, changeSentence, heldDaysText, reasonSentence } from '../../lib/wording/answer-rows.ts'
import { namesOf } from '../../lib/wording/names.ts'
import type { AnswerContext } from '../../lib/wording/one-answer.ts'

const read = readProgram(readFileSync(new URL('../../seeds/demo.json', import.meta.url), 'utf8'))
if (!read.ok) throw new Error('the demonstration cannot be read')
const authority = openRecords(recordsAt(read.value, read.value.entries.length))
const question = {
  work: {
    workKind: 'felling',
    sawKind: 'crosscut',
    diameter: 22,
    complexity: 'moderate',
    place: 'north-ashlar',
  },
  first: '2027-07-08',
  last: '2027-07-15',
  today: '2027-05-03',
} as Question
const beside = besideAnswer(authority, question)
const context: AnswerContext = {
  question,
  names: namesOf(authority.records),
  supervisors: beside.supervisors,
  edition: beside.edition,
  cardsOf: (person) => speakingCards(speakers(authority, question, person)),
}
const { answers } = ask(authority, question)
const of = (person: string) => answers.find((answer) => answer.person === person)!

describe('an answer in one line', () => {
  it('[WO20] that ends within the days asked says its runs, what ends it, and what would change it', () => {
    const answer = of('p-lukasz-wrzos')
    expect(heldDaysText(answer, context)).toBe(
      'on their own from 8 to 11 July 2027; no from 12 to 15 July 2027',
    )
    expect(reasonSentence(answer, context)).toBe(
      'From 12 July 2027: no. The last day of CPR is 11 July 2027.',
    )
    expect(changeSentence(answer, context)).toMatch(/^Renew CPR by .+ or leave it\.$/)
  })

  it('[WO20] on their own says through which day, what gives it, and nothing to change', () => {
    const answer = of('p-ifeoma-castellane')
    expect(heldDaysText(answer, context)).toBe('through 15 July 2027')
    expect(reasonSentence(answer, context)).toMatch(/^Card .+ gives it, and every requirement is met\.$/)
    expect(changeSentence(answer, context)).toBeUndefined()
  })

  it('[WO20] every answer has its reason, and says nothing twice empty', () => {
    for (const answer of answers) {
      const reason = reasonSentence(answer, context)
      expect(reason, answer.person).toMatch(/^[\p{Lu}“\d].*\.$/u)
      expect(`${reason} ${heldDaysText(answer, context)}`).not.toMatch(/undefined| {2}\S/)
    }
  })

  it('[WO20] as rows each says the question, as of when, and the notice', () => {
    const [head, ...rows] = answerRows(answers, context, { question: 'Who?', asOf: 'Then.', notice: 'Mind.' })
    expect(head?.slice(-3)).toEqual(['question', 'as of', 'notice'])
    expect(rows).toHaveLength(answers.length)
    for (const row of rows) {
      expect(row).toHaveLength(head?.length ?? 0)
      expect(row.slice(-3)).toEqual(['Who?', 'Then.', 'Mind.'])
    }
  })
})
