import { ask, companyMembers } from '../core/authority/ask.ts'
import type { AnswerToWrite } from '../core/authority/answer-json.ts'
import { besideAnswer } from '../core/authority/beside-answer.ts'
import { speakers, speakingCards } from '../core/authority/explain.ts'
import { success, type Result } from '../core/kernel/result.ts'
import type { Given } from './arguments.ts'
import type { Io } from './io.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../wording/notice.ts'
import { openProgram } from './open-program.ts'
import { misuse, type Refusal } from './outcome.ts'
import type { QuestionWords } from './question-words.ts'
import { resolveQuestion } from './resolve-question.ts'
import type { AskedText } from './text/ask-text.ts'

/** The one file that a command works on. */
export function onlyOperand(given: Given, noun: string): Result<string, Refusal> {
  const [file, ...more] = given.operands
  if (file === undefined) return misuse(`${noun} is missing.`)
  if (more.length > 0) return misuse(`One ${noun} is wanted, and there are ${given.operands.length}.`)
  return success(file)
}

/** Opens the program, asks the question, and gathers all that stands in the answer. */
export function askQuestion(file: string, words: QuestionWords, io: Io): Result<AskedText, Refusal> {
  const open = openProgram(file, words, io)
  if (!open.ok) return open
  const resolved = resolveQuestion(words, open.value)
  if (!resolved.ok) return resolved
  const question = resolved.value
  const { authority, names } = open.value
  const beside = besideAnswer(authority, question)
  const { answers, company } = ask(authority, question)
  return success({
    open: open.value,
    context: {
      question,
      names,
      supervisors: beside.supervisors,
      cardsOf: (person) => speakingCards(speakers(authority, question, person)),
      edition: beside.edition,
    },
    beside,
    answers,
    ...(company === undefined ? {} : { company }),
    members: company === undefined ? [] : companyMembers(authority, question),
  })
}

/** What the data of an answer are written from. */
export function answerToWrite({ open, context, beside, answers, company }: AskedText): AnswerToWrite {
  const { program, entries, invented } = open.program
  return {
    notice: AUTHORITY_IS_NOT_SAFETY,
    program,
    invented: invented === true,
    knownAt: { entry: open.knownAt, statedAt: entries[open.knownAt - 1]?.statedAt ?? '' },
    today: open.today,
    question: context.question,
    beside,
    people: open.authority.records.people,
    answers,
    ...(company === undefined ? {} : { company }),
  }
}
