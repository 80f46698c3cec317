import type { CompanyMember, Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Work } from '../../lib/core/authority/answer.ts'
import { plusDays } from '../../lib/core/calendar/dates.ts'
import type { Span } from '../../lib/core/calendar/spans.ts'
import { COMPLEXITIES, WORK_KINDS, type SawKind } from '../../lib/core/rulebooks/words.ts'
import { circumstances, diameter } from './generated-work.ts'
import type { Calendar, Draw } from './draw.ts'

/** A question of one day or a few, near the days of the records, by an item or as typed. */
export function generateQuestion(draw: Draw, calendar: Calendar, records: Records): Question {
  const ids = records.people.map(({ id }) => id)
  const work = draw.chance(40) ? workByItem(draw, records) : workAsTyped(draw, records)
  const near = calendar.near()
  const long = draw.chance(6) ? 60 : 12
  const span = { first: near, last: draw.chance(25) ? near : plusDays(near, draw.below(long)) }
  return {
    work,
    ...insideItsDays(span, records, work.item),
    today: draw.chance(60) ? calendar.farPast() : calendar.near(),
    ...(draw.chance(30) ? { persons: draw.someOf(ids, 50) } : {}),
    ...(draw.chance(45) ? { company: company(draw, calendar, ids) } : {}),
  }
}

/** The days that are asked are days of the item; where the span has none, its first day is asked. */
function insideItsDays(span: Span, records: Records, id: string | undefined): Span {
  const item = [...records.items, ...records.expectedWork].find((one) => one.id === id)
  const first = item?.firstDay !== undefined && item.firstDay > span.first ? item.firstDay : span.first
  const last = item?.lastDay !== undefined && item.lastDay < span.last ? item.lastDay : span.last
  if (first <= last) return { first, last }
  const only = item?.firstDay ?? span.first
  return { first: only, last: only }
}

function sawKind(draw: Draw): SawKind {
  return draw.amiss(10) ? 'chain-saw' : 'crosscut'
}

function workByItem(draw: Draw, records: Records): Work {
  const item = draw.pick([...records.items, ...records.expectedWork])
  const complexity = 'complexity' in item ? { complexity: item.complexity } : {}
  const { workKind, diameter: inches, hands, species, place } = item
  return {
    workKind,
    sawKind: sawKind(draw),
    diameter: inches,
    item: item.id,
    ...(hands === undefined ? {} : { hands }),
    ...(species === undefined ? {} : { species }),
    ...(place === undefined ? {} : { place }),
    ...complexity,
  }
}

function workAsTyped(draw: Draw, records: Records): Work {
  return {
    workKind: draw.pick(WORK_KINDS),
    sawKind: sawKind(draw),
    diameter: diameter(draw),
    ...circumstances(draw),
    ...(draw.chance(20) ? { item: draw.pick([...records.items, ...records.expectedWork]).id } : {}),
    complexity: draw.amiss(8) ? 'not-rated' : draw.pick(COMPLEXITIES),
  }
}

function company(draw: Draw, calendar: Calendar, ids: readonly string[]): CompanyMember[] {
  const inParties = draw.chance(30)
  return draw.someOf(ids, 80).map((person) => {
    const { firstDay, lastDay } = calendar.nearSpan()
    return {
      person,
      ...(draw.chance(20) ? { days: { first: firstDay, last: lastDay } } : {}),
      ...(inParties && draw.chance(80) ? { party: draw.pick(['one', 'two']) } : {}),
    }
  })
}
