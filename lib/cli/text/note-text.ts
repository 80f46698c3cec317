import type { Answer, Note } from '../../core/authority/answer.ts'
import { noteDaysText, noteSentence } from '../../wording/notes.ts'
import type { TextContext } from './person-text.ts'

/** How many names stand beside a note before they are counted. */
const NAMES_SHOWN = 6

/** The notes of all answers, each said once with whom and which days it is about. They change no answer. */
export function noteLines(answers: readonly Answer[], context: TextContext): string[] {
  const groups = new Map<string, { sentence: string; note: Note; people: string[] }>()
  for (const answer of answers) {
    for (const note of answer.notes) {
      const sentence = noteSentence(note, context.names)
      const key = `${sentence}|${noteDaysText(note)}`
      const group = groups.get(key)
      if (group === undefined) groups.set(key, { sentence, note, people: [answer.person] })
      else group.people.push(answer.person)
    }
  }
  if (groups.size === 0) return []
  return [
    '',
    'Notes, which change no answer',
    ...[...groups.values()].map(({ sentence, note, people }) => {
      const whole = isWholeSpan(note, context) ? '' : ` (${noteDaysText(note)})`
      return `  ${sentence}${whole}${peopleText(people, answers.length, context)}`
    }),
  ]
}

function isWholeSpan(note: Note, { question }: TextContext): boolean {
  const days = note.days[0]
  return note.days.length === 1 && days?.first === question.first && days.last === question.last
}

function peopleText(people: readonly string[], everybody: number, { names }: TextContext): string {
  if (people.length === everybody) return everybody === 1 ? '' : ' [everybody]'
  if (people.length > NAMES_SHOWN) return ` [${people.length} people]`
  return ` [${people.map(names.person).join(', ')}]`
}
