import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateField, instantField } from '../../../lib/core/calendar/dates.schema.ts'
import {
  dateOf,
  fromEpochDay,
  plusDays,
  toEpochDay,
  type EpochDay,
} from '../../../lib/core/calendar/dates.ts'
import {
  clockIn,
  dateIn,
  endOfDay,
  momentOf,
  isTimeZone,
  readInstant,
  type Instant,
} from '../../../lib/core/calendar/instants.ts'
import { RUNS } from '../../property-runs.ts'

function instant(text: string): Instant {
  const read = readInstant(text)
  if (read === undefined) throw new Error(`not a moment: ${text}`)
  return read
}

function nextMillisecond(moment: Instant): Instant {
  return instant(new Date(Date.parse(moment) + 1).toISOString())
}

describe('reading', () => {
  it.each([
    ['2027-04-14T16:40Z', '2027-04-14T16:40:00.000Z'],
    ['2027-04-14T16:40:00Z', '2027-04-14T16:40:00.000Z'],
    ['2027-04-14T16:40:59.9Z', '2027-04-14T16:40:59.900Z'],
    ['2027-04-14T16:40:59.999Z', '2027-04-14T16:40:59.999Z'],
    ['2199-12-31T23:59:59.999Z', '2199-12-31T23:59:59.999Z'],
    ['1900-01-01T00:00Z', '1900-01-01T00:00:00.000Z'],
  ])('[CAL18] %s is kept as %s', (text, kept) => {
    expect(readInstant(text)).toBe(kept)
  })

  it('[CAL18] texts sort as time does', () => {
    const moments = fc.integer({ min: Date.UTC(1900, 0, 1), max: Date.UTC(2199, 11, 31) })
    fc.assert(
      fc.property(moments, moments, (left, right) => {
        const texts = [left, right].map((moment) => instant(new Date(moment).toISOString()))
        expect((texts[0] ?? '') < (texts[1] ?? '')).toBe(left < right)
      }),
      { numRuns: RUNS },
    )
  })

  it.each([
    ['an offset', '2027-04-14T16:40:00+00:00'],
    ['no zone', '2027-04-14T16:40:00'],
    ['a day alone', '2027-04-14'],
    ['finer than a millisecond', '2027-04-14T16:40:00.0001Z'],
    ['hour 24', '2027-04-14T24:00:00Z'],
    ['minute 60', '2027-04-14T16:60:00Z'],
    ['second 60', '2016-12-31T23:59:60Z'],
    ['a day that does not exist', '2027-02-29T12:00:00Z'],
    ['year 0000', '0000-01-01T00:00:00Z'],
    ['the year before', '1899-12-31T23:59:59.999Z'],
    ['the year after', '2200-01-01T00:00:00Z'],
    ['year 9999', '9999-12-31T23:59:59Z'],
    ['small letters', '2027-04-14t16:40:00z'],
    ['a line end', '2027-04-14T16:40:00Z\n'],
    ['a million characters', `2027-04-14T16:40:00.${'0'.repeat(1_000_000)}Z`],
  ])('[CAL19] %s is no moment', (_name, text) => {
    expect(readInstant(text)).toBeUndefined()
  })
})

describe('in a time zone', () => {
  it.each([
    ['2027-07-08T05:59:59.999Z', 'America/Denver', '2027-07-07'],
    ['2027-07-08T06:00:00.000Z', 'America/Denver', '2027-07-08'],
    ['2027-01-08T06:59:59.999Z', 'America/Denver', '2027-01-07'],
    ['2027-01-08T07:00:00.000Z', 'America/Denver', '2027-01-08'],
    ['2027-07-08T23:59:59.999Z', 'UTC', '2027-07-08'],
    ['2027-07-08T10:00:00.000Z', 'Pacific/Kiritimati', '2027-07-09'],
    ['1900-01-01T00:00:00.000Z', 'America/Denver', '1899-12-31'],
    ['2199-12-31T23:59:59.999Z', 'Pacific/Auckland', '2200-01-01'],
  ])('[CAL20] %s in %s is on %s', (moment, zone, day) => {
    expect(dateIn(instant(moment), zone)).toBe(day)
  })

  it.each([
    ['2027-07-08T05:59:59.999Z', 'America/Denver', '23:59'],
    ['2027-01-08T07:00:00.000Z', 'America/Denver', '00:00'],
    ['2027-07-08T10:05:00.000Z', 'Asia/Kathmandu', '15:50'],
    ['2027-07-08T10:05:00.000Z', 'UTC', '10:05'],
  ])('[CAL20] %s in %s is at %s', (moment, zone, time) => {
    expect(clockIn(instant(moment), zone)).toBe(time)
  })

  it.each([
    ['an ordinary day', '2027-07-08', 'America/Denver', '2027-07-09T05:59:59.999Z'],
    ['UTC', '2027-07-08', 'UTC', '2027-07-08T23:59:59.999Z'],
    ['clocks go forward, 23 hours', '2027-03-14', 'America/Denver', '2027-03-15T05:59:59.999Z'],
    ['the day before clocks go forward', '2027-03-13', 'America/Denver', '2027-03-14T06:59:59.999Z'],
    ['clocks go back, 25 hours', '2027-11-07', 'America/Denver', '2027-11-08T06:59:59.999Z'],
    ['the day before clocks go back', '2027-11-06', 'America/Denver', '2027-11-07T05:59:59.999Z'],
    ['no midnight the next day', '2018-11-03', 'America/Sao_Paulo', '2018-11-04T02:59:59.999Z'],
    ['an hour at the end comes twice', '2018-02-17', 'America/Sao_Paulo', '2018-02-18T02:59:59.999Z'],
    ['half an hour', '2027-04-03', 'Australia/Lord_Howe', '2027-04-03T12:59:59.999Z'],
    ['before a day that the zone skipped', '2011-12-29', 'Pacific/Apia', '2011-12-30T09:59:59.999Z'],
    ['the last kept day', '2199-12-31', 'America/Denver', '2200-01-01T06:59:59.999Z'],
  ])('[CAL21] %s: %s in %s ends at %s', (_name, day, zone, moment) => {
    expect(endOfDay(dateOf(day), zone)).toBe(moment)
  })

  // The rule for times that come twice or not at all: RFC 5545 (2009), 3.3.5, form 3, as ECMAScript's Temporal follows it.
  it.each([
    ['an ordinary time', '2027-07-08', '14:30', 'America/Denver', '2027-07-08T20:30:00.000Z'],
    ['UTC', '2027-07-08', '00:00', 'UTC', '2027-07-08T00:00:00.000Z'],
    ['a time that comes twice', '2027-11-07', '01:30', 'America/Denver', '2027-11-07T07:30:00.000Z'],
    ['a time left out', '2027-03-14', '02:30', 'America/Denver', '2027-03-14T09:30:00.000Z'],
  ])('[CAL24] %s: %s %s in %s', (_name, day, time, zone, moment) => {
    expect(momentOf(dateOf(day), time, zone)).toBe(moment)
  })

  it('[CAL21] the next millisecond belongs to the next day', () => {
    const zones = [
      'America/Denver',
      'UTC',
      'America/Sao_Paulo',
      'Australia/Lord_Howe',
      'Asia/Kathmandu',
      'Africa/Cairo',
    ]
    const first = toEpochDay(dateOf('1950-01-01'))
    const last = toEpochDay(dateOf('2190-12-31'))
    fc.assert(
      fc.property(fc.integer({ min: first, max: last }), fc.constantFrom(...zones), (epochDay, zone) => {
        const day = fromEpochDay(epochDay as EpochDay)
        const end = endOfDay(day, zone)
        expect(dateIn(end, zone)).toBe(day)
        expect(dateIn(nextMillisecond(end), zone)).toBe(plusDays(day, 1))
      }),
      { numRuns: RUNS },
    )
  })

  it.each(['America/Denver', 'UTC', 'Europe/Berlin', 'Asia/Kathmandu'])(
    '[CAL22] %s is a time zone',
    (name) => {
      expect(isTimeZone(name)).toBe(true)
    },
  )

  it.each(['', '+05:00', '-07:00', '2020-01-01T00:00Z', 'Ashlar/Range', '__proto__', 'x'.repeat(1_000_000)])(
    '[CAL22] %# is no time zone',
    (name) => {
      expect(isTimeZone(name)).toBe(false)
    },
  )
})

describe('fields', () => {
  it.each([
    ['2027-7-8', 'a day is written YYYY-MM-DD'],
    ['2027-02-29', 'there is no such day'],
    ['2200-01-01', 'a day lies in the years 1900 to 2199'],
  ])('[CAL23] a day %s: %s', (text, message) => {
    const read = dateField.safeParse(text)
    expect(read.error?.issues.map((issue) => issue.message)).toEqual([message])
  })

  it('[CAL23] a moment with an offset is refused in words', () => {
    expect(dateField.parse('2027-07-08')).toBe('2027-07-08')
    expect(instantField.parse('2027-07-08T06:00Z')).toBe('2027-07-08T06:00:00.000Z')
    const read = instantField.safeParse('2027-07-08T00:00:00-06:00')
    expect(read.error?.issues.map((issue) => issue.message)).toEqual([
      'a moment is written in UTC, 2027-04-14T16:40:00Z, to the millisecond at most',
    ])
  })
})
