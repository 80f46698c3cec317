import { z } from 'zod'
import { dateField } from '../../core/calendar/dates.schema.ts'
import { toEpochDay, type CalendarDate } from '../../core/calendar/dates.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { refusal, success } from '../../core/kernel/result.ts'
import { EditionIndex, inForceOn } from '../../core/rulebooks/edition-index.ts'
import type { Rule, RuleOf } from '../../core/rulebooks/rules.schema.ts'
import { recordsAt } from '../../core/program/known.ts'
import type { Records } from '../../core/authority/records.ts'
import { PlaceIndex } from '../../core/work/place-index.ts'
import { observationsSchema } from '../../core/work/work.schema.ts'
import { rateWorksheet } from '../../core/work/worksheet.ts'
import { recordPhrase } from '../../wording/records.ts'
import { authorityAt } from '../authority/known-authority.ts'
import { wordsOf } from '../authority/known-words.ts'
import { query } from '../door/use-case.ts'
import { namesWithin, readableBy } from './readable.ts'

/** A factor of a worksheet as a page shows it. */
export type FactorShown = Pick<
  RuleOf<'worksheet.factor'>,
  'factor' | 'name' | 'says' | 'required' | 'options' | 'source' | 'mark'
>

/**
 * The complexity worksheet for a log, a tree or expected work: the factors of the edition in force at its place on a
 * day, what of it is on record, and how complex what was observed makes it.
 */
export const worksheetOfItem = query({
  name: 'records/worksheet',
  permission: 'read-books',
  input: z.strictObject({
    item: idField,
    day: z.exactOptional(dateField),
    observations: z.exactOptional(observationsSchema),
  }),
  load: (world, { item: id, day = world.today, observations }, actor) => {
    const records = recordsAt(world.snapshot.program, world.snapshot.n)
    const item = [...records.items, ...records.expectedWork].find((one) => one.id === id)
    const edition = item === undefined ? undefined : editionFor(records, item.place, day)
    if (item === undefined || edition === undefined) return refusal({ kind: 'not-found' })
    const known = wordsOf(authorityAt(world.snapshot, undefined).authority, world.snapshot).names
    const names = namesWithin(known, readableBy(actor, world))
    const rated = [
      ...records.ratings.map((fact) => ({ section: 'ratings' as const, fact })),
      ...records.raises.map((fact) => ({ section: 'raises' as const, fact })),
    ]
      .filter(({ fact }) => fact.item === id)
      .map(({ section, fact }) => ({ section, id: fact.id, says: recordPhrase(section, fact, names) }))
    return success({
      item: { id, name: item.name, workKind: item.workKind, diameter: item.diameter },
      section: 'least' in item ? ('expectedWork' as const) : ('items' as const),
      edition: { id: edition.id, name: edition.name },
      day,
      factors: factorsOf(edition.rules, item.workKind),
      stackings: edition.rules.filter((rule) => rule.kind === 'worksheet.stacking').map(({ says }) => says),
      rated,
      ...(observations === undefined
        ? {}
        : { read: rateWorksheet(edition.rules, item.workKind, observations) }),
    })
  },
  about: () => ({ kind: 'nothing' }),
  answer: (worksheet) => worksheet,
})

/** What the page of a worksheet shows. */
export type WorksheetShown = ReturnType<typeof worksheetOfItem.answer>

function editionFor(records: Records, place: string | undefined, day: CalendarDate) {
  const on = toEpochDay(day)
  const book =
    (place === undefined ? undefined : new PlaceIndex(records.places).bookOn(place, on)) ?? records.book
  const editions = records.editions.filter((one) => one.book === book).map((one) => new EditionIndex(one))
  return inForceOn(editions, on)?.edition
}

function factorsOf(rules: readonly Rule[], workKind: 'bucking' | 'felling'): readonly FactorShown[] {
  return rules.flatMap((rule) =>
    rule.kind === 'worksheet.factor' && rule.workKinds.includes(workKind) ? [rule] : [],
  )
}
