import { ask, type Answers } from '../../core/authority/ask.ts'
import { besideAnswer, type BesideAnswer } from '../../core/authority/beside-answer.ts'
import { speakers, speakingCards } from '../../core/authority/explain.ts'
import type { Question } from '../../core/authority/question.ts'
import type { Names } from '../../wording/names.ts'
import { query } from '../door/use-case.ts'
import { asOf, type AsOf } from './as-of.ts'
import { loadAsked } from './asked.ts'
import { wordsOf } from './known-words.ts'
import { questionSchema } from './question.schema.ts'

/** The answer to a question, what it was asked of, and all that is written with it. */
export type AnswerToQuestion = Answers &
  AsOf & {
    question: Question
    beside: BesideAnswer
    /** Those who are asked about and on record. */
    people: readonly { id: string; name: string }[]
    names: Names
    /** The cards that speak for those who may on their own, by person. */
    cards: ReadonlyMap<string, readonly string[]>
  }

/**
 * Who may do a piece of work, on which days, and why: of everybody whose standing the caller may read, or of those
 * who are named.
 */
export const askQuestion = query({
  name: 'authority/ask',
  permission: 'read-standing',
  input: questionSchema,
  load: loadAsked,
  about: ({ named }) => ({ kind: 'people', people: named }),
  answer: ({ authority, question, n }, world): AnswerToQuestion => {
    const { answers, company } = ask(authority, question)
    const asked = new Set(answers.map(({ person }) => person))
    const alone = answers.filter(({ standing }) => standing === 'independent')
    return {
      answers,
      ...(company === undefined ? {} : { company }),
      ...asOf(world, n),
      question,
      beside: besideAnswer(authority, question),
      people: authority.records.people.filter(({ id }) => asked.has(id)),
      names: wordsOf(authority, world.snapshot).names,
      cards: new Map(
        alone.map(({ person }) => [person, speakingCards(speakers(authority, question, person))]),
      ),
    }
  },
  looked: ({ answers, n }, asked) => ({ question: { ...asked, n }, count: answers.length }),
})
