import { explain } from '../../core/authority/explain.ts'
import { success } from '../../core/kernel/result.ts'
import { answerJson } from '../../core/authority/answer-json.ts'
import type { Command } from '../command.ts'
import { explanationJson } from '../explanation-json.ts'
import { PROGRAM } from '../help.ts'
import { misuse } from '../outcome.ts'
import { printableText } from '../printable.ts'
import { answerToWrite, askQuestion, onlyOperand } from '../question.ts'
import { QUESTION_OPTIONS, readQuestionWords } from '../question-words.ts'
import { indexRecords } from '../../wording/record-index.ts'
import { cautionLines, closingLines, openingLines } from '../text/ask-text.ts'
import { explainLines } from '../text/explain-text.ts'
import { noteLines } from '../text/note-text.ts'
import { personLines } from '../text/person-text.ts'

const { company: _company, ...EXPLAIN_OPTIONS } = QUESTION_OPTIONS

/** One person and one piece of work, to the last rule and record. */
export const explainCommand: Command = {
  name: 'explain',
  summary: 'one person and one piece of work, to the last rule and record',
  usage: [
    'explain FILE --person ID --work bucking|felling --diameter IN --complexity least|moderate|high --from DAY --through DAY',
    'explain FILE --person ID --item ID [--from DAY] [--through DAY]',
  ],
  about: [
    'Every requirement, met and not met, with its rule, its source and its mark, and every record behind it with who recorded it, in which entry and when.',
  ],
  options: { ...EXPLAIN_OPTIONS, json: { says: 'print data (seeds/kerfbook-answer-1.schema.json)' } },
  examples: [
    `${PROGRAM} explain seeds/demo.json --person p-lukasz-wrzos --work felling --diameter 22 --complexity moderate --from 2027-07-08 --through 2027-07-15`,
  ],
  run: (given, io) => {
    const file = onlyOperand(given, 'FILE')
    if (!file.ok) return file
    const words = readQuestionWords(given)
    if (!words.ok) return words
    if (words.value.person === undefined)
      return misuse('--person ID is missing: explain is about one person.')
    const asked = askQuestion(file.value, words.value, io)
    if (!asked.ok) return asked
    const { open, context, answers } = asked.value
    const person = context.question.persons?.[0] ?? ''
    const explained = explain(open.authority, context.question, person)
    const index = indexRecords(open.program, open.authority.records, context.names)
    const records = (id: string) => index(id, person)
    if (given.flags.has('json')) {
      const json = {
        ...answerJson(answerToWrite(asked.value)),
        explanation: explanationJson(explained, records),
      }
      return success(`${JSON.stringify(json, null, 2)}\n`)
    }
    const lines = [
      ...openingLines(asked.value),
      '',
      ...answers.flatMap((answer) => personLines(answer, context)),
      ...explainLines(explained, context, records),
      ...noteLines(answers, context),
      ...cautionLines(asked.value.beside.cautions),
      ...closingLines(open),
    ]
    return success(printableText(lines))
  },
}
