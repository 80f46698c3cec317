import type { Answer, SubSpan } from '../../core/authority/answer.ts'
import type { Question } from '../../core/authority/question.ts'
import type { Names } from '../../wording/names.ts'
import {
  grantedSentence,
  holdsSentences,
  reasonText,
  remedySentences,
  runSentence,
  type AnswerContext,
} from '../../wording/one-answer.ts'

/** What the texts about one question share. */
export type TextContext = AnswerContext & { question: Question }

/** One person's answer as indented lines: until when, why by runs of days, and what would change it. */
export function personLines(answer: Answer, context: TextContext): string[] {
  const granted = grantedSentence(answer, context)
  return [
    `  ${context.names.person(answer.person)}`,
    ...holdsSentences(answer, context).map((sentence) => `    ${sentence}`),
    ...(granted === undefined ? [] : [`    ${granted}`]),
    ...reasonLines(answer, context),
    ...remedySentences(answer, context).map((sentence) => `    ${sentence}`),
  ]
}

function reasonLines(answer: Answer, context: TextContext): string[] {
  const only = answer.spans.length === 1 ? answer.spans[0] : undefined
  if (only !== undefined) return only.findings.map((finding) => `    - ${reasonText(finding, context.names)}`)
  return answer.spans.flatMap((span) => [
    `    ${runSentence(span, context)}`,
    ...spanReasons(span, context.names),
  ])
}

function spanReasons(span: SubSpan, names: Names): string[] {
  return span.findings.map((finding) => `      - ${reasonText(finding, names)}`)
}
