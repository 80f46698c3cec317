import type { Answer, Note } from '../core/authority/answer.ts'
import type { Span } from '../core/calendar/spans.ts'
import type { Names } from './names.ts'
import { noteDaysText, noteSentence } from './notes.ts'

/** A note said once for all whom it is about; `days` where it is not about every day asked. */
export type SaidNote = { sentence: string; days?: string; people: readonly string[] }

/** The notes of all answers, each said once with whom and which days it is about. They change no answer. */
export function notesSaid(
  answers: readonly Pick<Answer, 'person' | 'notes'>[],
  asked: Span,
  names: Names,
): SaidNote[] {
  const groups = new Map<string, { sentence: string; note: Note; people: string[] }>()
  for (const answer of answers) {
    for (const note of answer.notes) {
      const sentence = noteSentence(note, names)
      const key = `${sentence}|${noteDaysText(note)}`
      const group = groups.get(key)
      if (group === undefined) groups.set(key, { sentence, note, people: [answer.person] })
      else group.people.push(answer.person)
    }
  }
  return [...groups.values()].map(({ sentence, note, people }) => ({
    sentence,
    ...(isWholeSpan(note, asked) ? {} : { days: noteDaysText(note) }),
    people,
  }))
}

/** How many names stand beside a note before they are counted. */
const NAMES_SHOWN = 6

/** Whom a note is about, of as many as were asked; empty where that is the only one. */
export function notedPeopleText(people: readonly string[], everybody: number, names: Names): string {
  if (people.length === everybody) return everybody === 1 ? '' : 'everybody'
  if (people.length > NAMES_SHOWN) return `${people.length} people`
  return people.map(names.person).join(', ')
}

function isWholeSpan(note: Note, asked: Span): boolean {
  const days = note.days[0]
  return note.days.length === 1 && days?.first === asked.first && days.last === asked.last
}
