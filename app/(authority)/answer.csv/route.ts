import { answerRows } from '../../../lib/wording/answer-rows.ts'
import { writeCsv } from '../../../lib/wording/csv.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../lib/wording/notice.ts'
import { asOfSentence, headedWork } from '../../../lib/wording/openings.ts'
import { questionSentence } from '../../../lib/wording/questions.ts'
import { exportAnswer } from '../export-answer.ts'

/** The answer as a sheet: a row for each person. */
export function POST(request: Request): Promise<Response> {
  return exportAnswer(request, {
    ending: 'csv',
    type: 'text/csv; charset=utf-8',
    write: ({ answers, question, beside, names, cards, n, statedAt, today }) =>
      writeCsv(
        answerRows(
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
        ),
      ),
  })
}
