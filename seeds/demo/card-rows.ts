import type { z } from 'zod'
import type { restrictionSchema } from '../../lib/core/cards/cards.schema.ts'
import type { WorkKind } from '../../lib/core/rulebooks/words.ts'
import { FEDERAL, type Draft } from './draft.ts'
import { entry, type EntryKey } from './entries.ts'

/** What a card for bucking alone names. */
export const BUCKING: WorkKind[] = ['bucking']
/** What a line for felling alone names. */
export const FELLING: WorkKind[] = ['felling']
/** What a card for both kinds of work names. */
export const BOTH: WorkKind[] = ['bucking', 'felling']

/** A line of a card, short; `more` has what only some lines say. */
export type CardRow = readonly [
  number: string,
  person: string,
  level: string,
  workKinds: WorkKind[],
  effectiveDay: string,
  lastDay: string,
  more?: Partial<Draft<'cards'>>,
]

function card(
  key: EntryKey,
  [number, person, level, workKinds, effectiveDay, lastDay, more]: CardRow,
): Draft<'cards'> {
  const line = more?.line ?? 1
  return {
    id: `${number.toLowerCase()}-${line}`,
    recordedIn: entry(key),
    number,
    line,
    person: `p-${person}`,
    book: FEDERAL,
    workKinds,
    sawKinds: ['crosscut'],
    level,
    effectiveDay,
    lastDay,
    restrictions: [],
    ...more,
  }
}

/** Cards issued by somebody else, or here before the program began to decide; `theirs` has the numbers there. */
export function carriedIn(
  key: EntryKey,
  issuer: string,
  rows: readonly CardRow[],
  theirs: Record<string, string> = {},
): Draft<'cards'>[] {
  return rows.map(([number, person, level, workKinds, effectiveDay, lastDay, more]) => {
    const elsewhere = theirs[number]
    return card(key, [
      number,
      person,
      level,
      workKinds,
      effectiveDay,
      lastDay,
      {
        ...more,
        carriedIn: {
          issuer,
          ...(elsewhere === undefined ? {} : { number: elsewhere }),
          seenBy: 'Petra Lindqvist-Amadi, certifying official',
          lastReconciled: '2027-03-01',
        },
      },
    ])
  })
}

/** Cards issued here by a decision. */
export function decided(
  key: EntryKey,
  rows: readonly (readonly [decision: string, row: CardRow])[],
): Draft<'cards'>[] {
  return rows.map(([decision, [number, person, level, workKinds, effectiveDay, lastDay, more]]) =>
    card(key, [
      number,
      person,
      level,
      workKinds,
      effectiveDay,
      lastDay,
      {
        issuedDay: effectiveDay,
        ...more,
        decision: `${decision}, Petra Lindqvist-Amadi, certifying official`,
      },
    ]),
  )
}

/** The restrictions of a card, for its row. */
export function restricted(
  ...restrictions: z.input<typeof restrictionSchema>[]
): Pick<Draft<'cards'>, 'restrictions'> {
  return { restrictions }
}
