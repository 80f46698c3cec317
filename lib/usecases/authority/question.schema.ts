import { z } from 'zod'
import { dateField, instantField } from '../../core/calendar/dates.schema.ts'
import { idField, inchesField, nameField } from '../../core/kernel/fields.schema.ts'
import { entryNumber } from '../../core/kernel/versions.schema.ts'
import { complexityField, sawKindField, workKindField } from '../../core/rulebooks/kinds/common.schema.ts'
import { HANDS } from '../../core/rulebooks/words.ts'

/** How many people one question may name. */
const MOST_NAMED = 200

/** A moment of knowing: an entry, an instant, or a day in the program's time zone. */
export const knownAtField = z.union([
  z.strictObject({ n: entryNumber }),
  z.strictObject({ instant: instantField }),
  z.strictObject({ day: dateField }),
])

/** A question: the work in words, or an item on record, on these days, as known then. */
export const questionSchema = z.strictObject({
  work: z.union([
    z.strictObject({ item: idField, sawKind: sawKindField }),
    z.strictObject({
      workKind: workKindField,
      sawKind: sawKindField,
      diameter: inchesField,
      complexity: complexityField,
      hands: z.exactOptional(z.enum(HANDS)),
      species: z.exactOptional(nameField),
      place: z.exactOptional(idField),
    }),
  ]),
  /** Days that an item names itself may be left out. */
  first: z.exactOptional(dateField),
  last: z.exactOptional(dateField),
  persons: z.exactOptional(z.array(idField).max(MOST_NAMED)),
  company: z.exactOptional(z.array(idField).max(MOST_NAMED)),
  knownAt: z.exactOptional(knownAtField),
})
export type AskedQuestion = z.infer<typeof questionSchema>
