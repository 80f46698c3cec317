import { answerJson } from '../../../lib/core/authority/answer-json.ts'
import { AUTHORITY_IS_NOT_SAFETY } from '../../../lib/wording/notice.ts'
import { exportAnswer } from '../export-answer.ts'

/** The answer as data, in the published format. */
export function POST(request: Request): Promise<Response> {
  return exportAnswer(request, {
    ending: 'json',
    type: 'application/json; charset=utf-8',
    write: (answer) =>
      `${JSON.stringify(
        answerJson({
          ...answer,
          notice: AUTHORITY_IS_NOT_SAFETY,
          knownAt: { entry: answer.n, statedAt: answer.statedAt ?? '' },
        }),
        null,
        2,
      )}\n`,
  })
}
