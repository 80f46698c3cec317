import type { z } from 'zod'
import {
  cardSchema,
  endingSchema,
  extensionSchema,
  liftSchema,
  resolutionSchema,
  suspensionSchema,
} from '../../lib/core/cards/cards.schema.ts'
import type {
  Card,
  Ending,
  Extension,
  Lift,
  Resolution,
  Suspension,
} from '../../lib/core/cards/cards.schema.ts'

/** A federal card for bucking with the crosscut, 14 April 2025 through 13 April 2028, without restrictions. */
export function card(of: string, level: string, said: Partial<z.input<typeof cardSchema>> = {}): Card {
  return cardSchema.parse({
    id: `card-${of}`,
    recordedIn: 1,
    number: `N-${of}`,
    line: 1,
    person: of,
    book: 'federal-crosscut',
    workKinds: ['bucking'],
    sawKinds: ['crosscut'],
    level,
    effectiveDay: '2025-04-14',
    lastDay: '2028-04-13',
    restrictions: [],
    decision: 'Invented decision',
    ...said,
  })
}

/** A decision that a card no longer counts from a day on. */
export function ending(
  of: string,
  firstDay: string,
  said: Partial<z.input<typeof endingSchema>> = {},
): Ending {
  return endingSchema.parse({
    id: `ending-${of}`,
    recordedIn: 1,
    card: of,
    kind: 'withdrawn',
    firstDay,
    decision: 'Invented decision',
    by: 'Invented Official',
    ...said,
  })
}

/** What free text on a card was found to mean: nothing, unless said otherwise. */
export function resolution(
  of: string,
  restriction: string,
  said: Partial<z.input<typeof resolutionSchema>> = {},
): Resolution {
  return resolutionSchema.parse({
    id: `resolution-${of}-${restriction}`,
    recordedIn: 1,
    card: of,
    restriction,
    into: [],
    by: 'Invented Official',
    reason: 'Invented reason',
    ...said,
  })
}

/** An order that lets cards run longer; a blanket one over the end of 2027 unless said otherwise. */
export function extension(id: string, said: Partial<z.input<typeof extensionSchema>> = {}): Extension {
  return extensionSchema.parse({
    id,
    recordedIn: 1,
    book: 'federal-crosscut',
    runsTo: '2028-12-31',
    effectiveDay: '2027-01-01',
    order: 'Invented order',
    source: 'made up for a test',
    of: { kind: 'window', firstDay: '2027-10-01', lastDay: '2028-12-31' },
    ...said,
  })
}

/** A stand-down of one person for an unsafe act, from 9 July 2027 unless said otherwise. */
export function suspension(id: string, said: Partial<z.input<typeof suspensionSchema>> = {}): Suspension {
  return suspensionSchema.parse({
    id,
    recordedIn: 1,
    form: 'stand-down',
    kind: 'unsafe-act',
    subject: { kind: 'person', person: 'p-1' },
    firstDay: '2027-07-09',
    by: 'Invented Lead',
    reason: 'Invented reason',
    ...said,
  })
}

/** A decision to lift a suspension: the day before `day` is its last. */
export function lift(of: string, day: string, said: Partial<z.input<typeof liftSchema>> = {}): Lift {
  return liftSchema.parse({
    id: `lift-${of}`,
    recordedIn: 1,
    suspension: of,
    day,
    decision: 'Invented decision',
    by: 'Invented Official',
    ...said,
  })
}
