import fc from 'fast-check'
import { expect, it } from 'vitest'
import type { AnswerBody } from '../../lib/core/authority/answer-one.ts'
import { ask, askBriefly, openRecords } from '../../lib/core/authority/ask.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import { plusDays } from '../../lib/core/calendar/dates.ts'
import type { CalendarDate } from '../../lib/core/calendar/dates.ts'
import { recordsAt } from '../../lib/core/program/known.ts'
import { SECTION_NAMES, type Fact } from '../../lib/core/program/sections.ts'
import { rankOf } from '../../lib/core/rulebooks/standing.ts'
import type { Standing } from '../../lib/core/rulebooks/standing.ts'
import { COMPARED_SEED, RUNS } from '../property-runs.ts'
import { Calendar, Draw } from './draw.ts'
import { generateRestriction, generateSuspension } from './generated-cards.ts'
import { ENTRIES, historyOfSeed, programOf } from './history-generator.ts'
import { caseOfSeed, seeds } from './program-generator.ts'

function holds(law: (seed: number) => void): void {
  fc.assert(fc.property(seeds(), law), { numRuns: RUNS, seed: COMPARED_SEED })
}

function answersTo(records: Records, question: Question): readonly AnswerBody[] {
  return askBriefly(openRecords(records), question)
}

function daysOf(question: Question): CalendarDate[] {
  const days = [question.first]
  while ((days.at(-1) ?? question.last) < question.last) days.push(plusDays(days.at(-1) ?? question.last, 1))
  return days
}

function standingOn(answer: AnswerBody | undefined, day: CalendarDate): Standing | undefined {
  return answer?.spans.find(({ first, last }) => first <= day && day <= last)?.standing
}

/**
 * What is asked does not rest on ratings: who made them may be anybody of the record, and what stops a rater may raise
 * or lower what others are.
 */
function asTyped(question: Question): Question {
  return { ...question, work: { ...question.work, complexity: question.work.complexity ?? 'least' } }
}

function expectNoneRaised(
  before: readonly AnswerBody[],
  after: readonly AnswerBody[],
  question: Question,
): void {
  before.forEach((answer, index) => {
    for (const day of daysOf(question)) {
      const was = standingOn(answer, day) ?? 'none'
      const is = standingOn(after[index], day) ?? 'independent'
      expect(rankOf(is), `${answer.person} on ${day}: ${was} became ${is}`).toBeLessThanOrEqual(rankOf(was))
    }
  })
}

it('[AU28] adding a restriction never raises a standing', () => {
  holds((seed) => {
    const { records, question } = caseOfSeed(seed)
    fc.pre(records.cards.length > 0)
    const draw = new Draw(seed + 1)
    const bound = draw.pick(records.cards)
    const restrictions = [...bound.restrictions, generateRestriction(draw, 'added')]
    const cards = records.cards.map((card) => (card === bound ? { ...card, restrictions } : card))
    const asked = asTyped(question)
    expectNoneRaised(answersTo(records, asked), answersTo({ ...records, cards }, asked), asked)
  })
})

it('[AU53] adding a suspension never raises a standing', () => {
  holds((seed) => {
    const { records, question } = caseOfSeed(seed)
    const draw = new Draw(seed + 1)
    const people = records.people.map(({ id }) => id)
    const added = {
      ...generateSuspension(draw, new Calendar(draw), 0, people, records.cards),
      id: 'added',
      firstDay: question.first,
    }
    const asked = asTyped(question)
    const suspensions = [...records.suspensions, added]
    expectNoneRaised(answersTo(records, asked), answersTo({ ...records, suspensions }, asked), asked)
  })
})

it('[KE7] what is recorded later changes nothing that was known', () => {
  holds((seed) => {
    const { versions, question } = historyOfSeed(seed)
    const n = 1 + (Math.abs(seed) % ENTRIES)
    const onlyUntil = SECTION_NAMES.reduce<Records>(
      (whole, name) => ({
        ...whole,
        [name]: versions[name]
          .filter((fact) => fact.recordedIn <= n)
          .map((fact) => {
            const { supersededIn, ...current } = fact
            return supersededIn !== undefined && supersededIn <= n ? fact : current
          }),
      }),
      { ...versions, knownAt: n },
    )
    const whole = recordsAt(programOf(versions), n)
    const withoutLater = recordsAt(programOf(onlyUntil), n)
    expect(answersTo(whole, question)).toEqual(answersTo(withoutLater, question))
  })
})

it('[AU3] [AU4] the order of facts in a file never matters', () => {
  holds((seed) => {
    const { records, question } = caseOfSeed(seed)
    const draw = new Draw(seed + 1)
    const shuffled = SECTION_NAMES.reduce<Records>(
      (whole, name) =>
        name === 'people' ? whole : { ...whole, [name]: inAnyOrder<Fact>(draw, records[name]) },
      records,
    )
    const before = ask(openRecords(records), question)
    expect(ask(openRecords(shuffled), question)).toEqual(before)
  })
})

it('[AU66] the company never changes a standing', () => {
  holds((seed) => {
    const { records, question } = caseOfSeed(seed)
    const company = records.people.map(({ id }) => ({ person: id }))
    const { company: _without, ...alone } = question
    const authority = openRecords(records)
    expect(ask(authority, { ...alone, company }).answers).toEqual(ask(authority, alone).answers)
  })
})

it('[AU13] [AU9] the standing of a span is the worst of its days, each asked alone', () => {
  holds((seed) => {
    const { records, question } = caseOfSeed(seed)
    const authority = openRecords(records)
    const whole = askBriefly(authority, question)
    const days = daysOf(question).slice(0, 12)
    const alone = days.map((day) => askBriefly(authority, { ...question, first: day, last: day }))
    whole.forEach((answer, index) => {
      days.forEach((day, at) => expect(standingOn(answer, day)).toBe(alone[at]?.[index]?.standing))
      const ranks = answer.spans.map(({ standing }) => rankOf(standing))
      expect(rankOf(answer.standing)).toBe(Math.min(...ranks))
    })
  })
})

it('[AU10] [AU11] a standing holds through its day and is another on the next', () => {
  holds((seed) => {
    const { records, question } = caseOfSeed(seed)
    // A run goes on past the item's days, and then nothing may be asked of the item.
    const undated = <Dated extends { firstDay?: unknown; lastDay?: unknown }>(items: readonly Dated[]) =>
      items.map(({ firstDay: _first, lastDay: _last, ...item }) => item)
    const authority = openRecords({
      ...records,
      items: undated(records.items),
      expectedWork: undated(records.expectedWork),
    })
    const on = (day: CalendarDate, person: string) =>
      askBriefly(authority, { ...question, first: day, last: day, persons: [person] })[0]
    for (const answer of askBriefly(authority, question)) {
      const first = answer.spans[0]?.standing ?? 'none'
      if (answer.holdsThrough !== 'open') {
        expect(on(answer.holdsThrough, answer.person)?.standing).toBe(first)
        const next = on(plusDays(answer.holdsThrough, 1), answer.person)
        expect(answer.endedBy).toMatchObject({
          day: plusDays(answer.holdsThrough, 1),
          standing: next?.standing,
        })
        expect(next?.standing).not.toBe(first)
      }
      if (answer.atLeastThrough !== 'open') {
        const next = on(plusDays(answer.atLeastThrough, 1), answer.person)?.standing ?? 'independent'
        expect(rankOf(next)).toBeLessThan(rankOf(first))
      }
    }
  })
})

it('[AU3] [AU7] who is on their own has no findings, and nobody is more than a finding allows', () => {
  holds((seed) => {
    const { records, question } = caseOfSeed(seed)
    for (const answer of answersTo(records, question))
      for (const { standing, findings } of answer.spans) {
        expect(findings.length === 0).toBe(standing === 'independent')
        const allowed = findings.map(({ allows }) => rankOf(allows))
        expect(rankOf(standing)).toBe(Math.min(rankOf('independent'), ...allowed))
      }
  })
})

it('[AU9] [AU27] a renewal without a gap divides nothing', () => {
  holds((seed) => {
    const { records, question } = caseOfSeed(seed)
    const only = records.people
      .map(({ id }) => records.cards.filter(({ person }) => person === id))
      .find((cards) => cards.length === 1 && cards[0]?.lastDay !== undefined)?.[0]
    fc.pre(only?.lastDay !== undefined && only.effectiveDay < only.lastDay)
    // Orders look at a card's own last day, which is what this moves.
    const base = { ...records, extensions: [], endings: [] }
    const middle = question.first < only.lastDay && question.first >= only.effectiveDay
    const last = middle ? question.first : only.effectiveDay
    const earlier = { ...only, lastDay: last }
    const renewal = { ...only, id: `${only.id}-next`, line: only.line + 1, effectiveDay: plusDays(last, 1) }
    const split = {
      ...base,
      cards: [...records.cards.filter((card) => card !== only), earlier, renewal],
      resolutions: [
        ...records.resolutions,
        ...records.resolutions
          .filter(({ card }) => card === only.id)
          .map((one) => ({ ...one, id: `${one.id}-next`, card: renewal.id })),
      ],
    }
    const asked = { ...asTyped(question), persons: [only.person] }
    expect(inShort(answersTo(split, asked))).toEqual(inShort(answersTo(base, asked)))
  })
})

function inAnyOrder<One>(draw: Draw, facts: readonly One[]): One[] {
  return facts
    .map((fact) => ({ fact, at: draw.below(1_000_000) }))
    .sort((left, right) => left.at - right.at)
    .map(({ fact }) => fact)
}

/** Spans with kinds, rules and figures, without the records and rules' editions that a renewal may change. */
function inShort(answers: readonly AnswerBody[]): unknown {
  return answers.map(({ spans, holdsThrough, atLeastThrough }) => ({
    holdsThrough,
    atLeastThrough,
    spans: spans.map(({ first, last, standing, findings }) => ({
      first,
      last,
      standing,
      findings: findings.map(({ records: _records, rule, ...figures }) => ({ rule: rule?.rule, ...figures })),
    })),
  }))
}
