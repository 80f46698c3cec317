import type { AnswerToQuestion } from '../../lib/usecases/authority/ask.ts'
import { answerRows } from '../../lib/wording/answer-rows.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../lib/wording/notice.ts'
import { asOfSentence, headedWork } from '../../lib/wording/openings.ts'
import { questionSentence } from '../../lib/wording/questions.ts'

/** An answer as the rows of a sheet: one for each person. */
export function rowsOfAnswer({
  answers,
  question,
  beside,
  names,
  cards,
  n,
  statedAt,
  today,
}: AnswerToQuestion) {
  return answerRows(
    answers,
    {
      question,
      names,
      supervisors: beside.supervisors,
      cardsOf: (person) => cards.get(person) ?? [],
      edition: beside.edition,
    },
    {
      question: questionSentence(headedWork(question.work, beside.runs), question, names),
      asOf: asOfSentence(n, statedAt, today),
      notice: AUTHORITY_IS_NOT_SAFETY,
    },
  )
}
