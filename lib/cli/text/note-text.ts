import type { Answer } from '../../core/authority/answer.ts'
import { notedPeopleText, notesSaid } from '../../wording/noted.ts'
import type { TextContext } from './person-text.ts'

/** The notes of all answers as lines, apart from the reasons. */
export function noteLines(answers: readonly Answer[], { question, names }: TextContext): string[] {
  const notes = notesSaid(answers, question, names)
  if (notes.length === 0) return []
  return [
    '',
    'Notes, which change no answer',
    ...notes.map(({ sentence, days, people }) => {
      const whom = notedPeopleText(people, answers.length, names)
      return `  ${sentence}${days === undefined ? '' : ` (${days})`}${whom === '' ? '' : ` [${whom}]`}`
    }),
  ]
}
