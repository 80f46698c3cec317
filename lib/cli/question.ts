import { ask } from '../core/authority/ask.ts'
import { explain, type ExplainedDays } from '../core/authority/explain.ts'
import { success, type Result } from '../core/kernel/result.ts'
import type { Given } from './arguments.ts'
import { cautionsShown } from './cautions-shown.ts'
import type { Io } from './io.ts'
import { openProgram } from './open-program.ts'
import { misuse, type Refusal } from './outcome.ts'
import type { QuestionWords } from './question-words.ts'
import { resolveQuestion } from './resolve-question.ts'
import type { AskedText } from './text/ask-text.ts'
import { supervisors, workRuns } from './work-days.ts'

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
  const runs = workRuns(authority, question)
  const { answers, company } = ask(authority, question)
  return success({
    open: open.value,
    context: {
      question,
      names,
      supervisors: supervisors(runs, question),
      cardsOf: (person) => speakingCards(explain(authority, question, person)),
      edition: runs.find((run) => run.edition !== undefined)?.edition?.edition.id ?? '',
    },
    runs,
    answers,
    ...(company === undefined ? {} : { company }),
    cautions: cautionsShown(runs, question, authority.records.cautions),
  })
}

function speakingCards(explained: readonly ExplainedDays[]): string[] {
  const cards = explained.flatMap(({ spokenBy }) => (spokenBy.by === 'card' ? [spokenBy.card] : []))
  return [...new Set(cards)]
}
