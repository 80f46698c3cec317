import { success } from '../../core/kernel/result.ts'
import { answerJson } from '../../core/authority/answer-json.ts'
import type { Command } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { printableText } from '../printable.ts'
import { answerToWrite, askQuestion, onlyOperand } from '../question.ts'
import { QUESTION_OPTIONS, readQuestionWords } from '../question-words.ts'
import { askLines } from '../text/ask-text.ts'

/** Who may do a piece of work, on which days. */
export const askCommand: Command = {
  name: 'ask',
  summary: 'who may do a piece of work, on which days, and why',
  usage: [
    'ask FILE --work bucking|felling --diameter IN --complexity least|moderate|high --from DAY --through DAY',
    'ask FILE --item ID [--from DAY] [--through DAY]',
  ],
  about: [
    'FILE is a program file. Everybody on record is answered, in groups: on their own; under somebody; in training; not on record; no.',
    'With --item the work and its days come from the record, and --from and --through cut them.',
    'With --company it also says who supervises whom, and what is short.',
  ],
  options: { ...QUESTION_OPTIONS, json: { says: 'print data (seeds/kerfbook-answer-1.schema.json)' } },
  examples: [
    `${PROGRAM} ask seeds/demo.json --work felling --diameter 22 --complexity moderate --from 2027-07-08 --through 2027-07-15 --place north-ashlar`,
    `${PROGRAM} ask seeds/demo.json --work bucking --diameter "22 1/2" --complexity least --from 2027-06-14 --through 2027-06-18 --hands two --person p-lukasz-wrzos --json`,
    `${PROGRAM} ask seeds/demo.json --item i-c-04-tree-1 --company p-mbali-kamabaso,p-siobhan-o-briain,p-wulandari`,
    `${PROGRAM} ask seeds/demo.json --work felling --diameter 22 --complexity moderate --from 2027-07-08 --through 2027-07-15 --person p-lukasz-wrzos --known-at 60`,
  ],
  run: (given, io) => {
    const file = onlyOperand(given, 'FILE')
    if (!file.ok) return file
    const words = readQuestionWords(given)
    if (!words.ok) return words
    const asked = askQuestion(file.value, words.value, io)
    if (!asked.ok) return asked
    if (given.flags.has('json'))
      return success(`${JSON.stringify(answerJson(answerToWrite(asked.value)), null, 2)}\n`)
    return success(printableText(askLines(asked.value)))
  },
}
