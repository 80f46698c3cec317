import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOf, plusDays } from '../../lib/core/calendar/dates.ts'
import { dayText, weekdayText } from '../../lib/wording/days.ts'
import { readDay } from '../../lib/wording/read-day.ts'
import { RUNS } from '../property-runs.ts'

describe('a day as people write it', () => {
  it.each([
    '2027-07-08',
    '2027-7-8',
    '8 July 2027',
    ' 8 jul 27 ',
    '8. July 2027',
    '8th July 2027',
    '8-Jul-2027',
    'July 8, 2027',
    'Jul 8 2027',
    'Thu 8 Jul 2027',
    'Thursday, 8 July 2027',
    '08 JULY 2027',
  ])('[WO19] %s is read', (text) => {
    expect(readDay(text)).toEqual({ ok: true, value: '2027-07-08' })
  })

  it('[WO19] the month whose short form has four letters is read', () => {
    expect(readDay('1 Sept 2027')).toEqual({ ok: true, value: '2027-09-01' })
  })

  it.each([
    ['31 June 27', 'June 2027 has 30 days'],
    ['29 Feb 2027', 'February 2027 has 28 days'],
    ['0 July 2027', 'July 2027 has 31 days'],
    ['2027-13-01', '12 months'],
    ['8/7/2027', 'two different days'],
    ['8.7.27', 'two different days'],
    ['8 July 1899', '1900 to 2199'],
    ['8 July 2200', '1900 to 2199'],
    ['8 July', 'written like'],
    ['8 Julius 2027', 'written like'],
    ['8 Ju 2027', 'written like'],
    ['tomorrow', 'written like'],
    ['', 'written like'],
    ['8 July 20277', 'written like'],
    ['8 July 2027 '.repeat(50), 'written like'],
    ['８ July 2027', 'written like'],
  ])('[WO19] %s is refused in words', (text, words) => {
    const read = readDay(text)
    expect(!read.ok && read.problem).toContain(words)
  })

  it('[WO19] what is written for any day is read as that day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 109_000 }), (days) => {
        const date = plusDays(dateOf('1900-01-01'), days)
        expect(readDay(dayText(date))).toEqual({ ok: true, value: date })
        expect(readDay(`${weekdayText(date)} ${dayText(date)}`)).toEqual({ ok: true, value: date })
      }),
      { numRuns: RUNS },
    )
  })

  it('[WO10] the day of the week is that of the calendar', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 109_000 }), (days) => {
        const date = plusDays(dateOf('1900-01-01'), days)
        const told = new Date(`${date}T12:00:00Z`).toLocaleDateString('en', {
          weekday: 'long',
          timeZone: 'UTC',
        })
        expect(weekdayText(date)).toBe(told)
      }),
      { numRuns: RUNS },
    )
  })
})
