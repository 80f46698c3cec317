import { MONTHS } from './days.ts'

/** A month is known by this many letters, as people shorten it. */
const SHORTEST_MONTH = 3
const WORDS = /^([a-z]{3,9})\.?,? +(\d{4})$/
const ISO = /^(\d{4})-(\d{1,2})$/

/** The number, from 1 on, of a month that is written in letters, whole or shortened; nothing where it is none. */
export function monthNumber(word: string): number | undefined {
  const short = word.slice(0, SHORTEST_MONTH).toLowerCase()
  const place = MONTHS.findIndex((name) => name.slice(0, SHORTEST_MONTH).toLowerCase() === short)
  const isMonth =
    place >= 0 && (MONTHS[place]?.toLowerCase().startsWith(word.toLowerCase()) === true || word === 'sept')
  return isMonth ? place + 1 : undefined
}

/** A month with its year and no day, as `May 2027`, `sept 2027` or `2027-05`; nothing where it is anything else. */
export function readMonth(text: string): { year: number; month: number } | undefined {
  const typed = text.trim().toLowerCase()
  const words = WORDS.exec(typed)
  const iso = ISO.exec(typed)
  const month = words === null ? Number(iso?.[2]) : monthNumber(words[1] ?? '')
  const year = Number(words?.[2] ?? iso?.[1])
  return month === undefined || !(month >= 1 && month <= 12) || Number.isNaN(year)
    ? undefined
    : { year, month }
}
