import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { isKnownAt } from '../../lib/core/kernel/versions.ts'
import { latestEntry } from '../../lib/core/program/known.ts'
import { writeProgram } from '../../lib/core/program/write-program.ts'
import { hitches } from '../../seeds/demo/hitch-list.ts'
import { demoProgram } from '../../seeds/demo/demo-program.ts'
import { demo, demoText } from './demo.ts'

describe('the file', () => {
  it('[P13] building again gives the committed file byte for byte', () => {
    expect(writeProgram(demoProgram())).toBe(demoText)
  })

  it('[P13] reading and writing it gives the same file', () => {
    expect(writeProgram(demo)).toBe(demoText)
  })

  it('[E11] says that it is invented, and is small enough to read', () => {
    expect(demo.invented).toBe(true)
    expect(demo.program).toMatchObject({ timeZone: 'America/Denver', book: 'federal-crosscut' })
    expect(Buffer.byteLength(demoText)).toBeLessThan(1_500_000)
  })

  it('[E11] two past seasons are entries, in order, the last on the day it is shown', () => {
    expect(latestEntry(demo)).toBeGreaterThanOrEqual(60)
    expect(latestEntry(demo)).toBeLessThanOrEqual(120)
    const moments = demo.entries.map(({ statedAt }) => statedAt)
    expect(moments).toEqual([...moments].sort())
    expect(moments[0]?.slice(0, 7)).toBe('2025-03')
    expect(moments.at(-1)?.slice(0, 10)).toBe('2027-05-03')
  })

  it('[E11] the editions of 2012 and 2016 follow each other, and the older says that it is made up', () => {
    const federal = demo.editions.filter(({ book }) => book === 'federal-crosscut')
    expect(federal.map(({ id, firstDay, lastDay }) => [id, firstDay, lastDay])).toEqual([
      ['federal-crosscut-2012', '2012-02-15', '2016-07-18'],
      ['federal-crosscut-2016', '2016-07-19', undefined],
    ])
    const older = federal[0]
    expect(older?.says).toMatch(/^Invented for the demonstration/)
    expect(older?.rules.every(({ source }) => source.startsWith('Invented for the demonstration'))).toBe(true)
  })
})

describe('the page about it', () => {
  it('[E11] names nobody and nothing that is not in the file', () => {
    const page = readFileSync(new URL('../../seeds/README.md', import.meta.url), 'utf8')
    const ids = new Set(
      [demo.people, demo.items, demo.expectedWork, demo.assignments].flatMap((facts) =>
        facts.map(({ id }) => id),
      ),
    )
    const named = page.match(/(?<=[`, ])(?:[pix]-[a-z0-9-]+|a-c-[a-z0-9-]+)/g) ?? []
    expect(named.length).toBeGreaterThan(60)
    expect(named.filter((id) => !ids.has(id))).toEqual([])
  })
})

describe('the people', () => {
  const now = latestEntry(demo)
  const names = demo.people.map(({ name }) => name)

  it('[E11] there are fifty-nine, and the names that break software are among them', () => {
    expect(names).toHaveLength(59)
    for (const name of [
      'Łukasz Wrzos',
      'Nguyễn Thị Sương',
      'Siobhán Ó Briain',
      'Mbali kaMabaso',
      "Jean-Luc d'Aoust",
      'Wulandari',
      '백은지',
    ])
      expect(names).toContain(name)
    expect(names.some((name) => /\p{Script=Arabic}/u.test(name))).toBe(true)
    expect(Math.max(...names.map((name) => name.length))).toBeGreaterThanOrEqual(150)
  })

  it('[E11] two people have the same name', () => {
    const ids = demo.people.filter(({ name }) => name === 'Dana Whitlow').map(({ id }) => id)
    expect(ids).toEqual(['p-dana-whitlow', 'p-dana-whitlow-2'])
  })

  it('[E11] on the day it is shown there are 6 C, 16 B, 17 A and 10 trainees', () => {
    const rank = ['trainee', 'A', 'B', 'C']
    const best = new Map<string, string>()
    const ended = new Set(
      demo.endings.filter(({ firstDay }) => firstDay <= '2027-05-03').map(({ card }) => card),
    )
    const halted = new Set(['p-ivo-radoslavov', 'p-grigor-tsvetanov'])
    for (const card of demo.cards) {
      if (!isKnownAt(card, now) || ended.has(card.id) || halted.has(card.person)) continue
      if (card.effectiveDay > '2027-05-03' || (card.lastDay ?? '') < '2027-05-03') continue
      if (!card.sawKinds.includes('crosscut')) continue
      const before = best.get(card.person)
      // Somebody with an A for felling and a B for bucking counts as the A.
      if (card.person === 'p-wulandari') best.set(card.person, 'A')
      else if (before === undefined || rank.indexOf(card.level) > rank.indexOf(before))
        best.set(card.person, card.level)
    }
    const counts = Object.fromEntries(
      rank.map((level) => [level, [...best.values()].filter((held) => held === level).length]),
    )
    expect(counts).toEqual({ trainee: 10, A: 17, B: 16, C: 6 })
  })
})

describe('the season', () => {
  it('[E18] has 24 hitches of 4 to 10 days between 7 June and 24 October, each with work', () => {
    expect(hitches).toHaveLength(24)
    const work = [...demo.items, ...demo.expectedWork]
    for (const { list, firstDay, lastDay } of hitches) {
      const length = (Date.parse(lastDay) - Date.parse(firstDay)) / 86_400_000 + 1
      expect(length, list).toBeGreaterThanOrEqual(4)
      expect(length, list).toBeLessThanOrEqual(10)
      expect(firstDay >= '2027-06-07' && lastDay <= '2027-10-24', list).toBe(true)
      const own = work.filter((item) => item.list === list)
      expect(own.length, list).toBeGreaterThan(0)
      for (const item of own)
        expect(
          (item.firstDay ?? '') >= firstDay && (item.lastDay ?? '9999') <= lastDay,
          `${list} ${item.id}`,
        ).toBe(true)
    }
  })

  it('[E18] most hitches have expected work alone', () => {
    const surveyed = new Set(demo.items.map(({ list }) => list))
    expect(hitches.filter(({ list }) => !surveyed.has(list)).length).toBeGreaterThanOrEqual(12)
  })

  it('[E18] six people at most are on a class', () => {
    const bySession = new Map<string, number>()
    for (const { id } of demo.assignments)
      bySession.set(id.slice(0, 6), (bySession.get(id.slice(0, 6)) ?? 0) + 1)
    expect([...bySession]).toEqual([
      ['a-c-01', 6],
      ['a-c-02', 6],
      ['a-c-03', 6],
      ['a-c-04', 6],
      ['a-c-05', 1],
    ])
  })
})
