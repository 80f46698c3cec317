import { readTypedQuestion } from './typed-question.ts'

/** The question of an address as it is kept: without how many rows were shown, and which were open. Nothing where it is none. */
export function questionToKeep(words: URLSearchParams): object | undefined {
  const read = readTypedQuestion(Object.fromEntries(words))
  if (read.kind !== 'read') return undefined
  return Object.fromEntries(Object.entries(read.input).filter(([name]) => !['rows', 'open'].includes(name)))
}
