import { z } from 'zod'
import { dateField } from '../../core/calendar/dates.schema.ts'
import { idField } from '../../core/kernel/fields.schema.ts'
import { STATUSES } from '../../drawings/status.ts'
import { thenFields } from './then.schema.ts'

/** By what the list of people may be ordered. */
export const PEOPLE_SORTS = ['name', 'unit', 'organisation', 'bucking', 'felling', 'next'] as const

/** What the list of people is cut to, and its order. Whoever fits every filter is listed. */
export const peopleListSchema = z.strictObject({
  /** Part of a name, without accents and capitals where it is typed without. */
  name: z.exactOptional(z.string().trim().max(200, 'a name has at most 200 letters')),
  unit: z.exactOptional(idField),
  organisation: z.exactOptional(idField),
  /** Of bucking or of felling. */
  status: z.exactOptional(z.enum([...STATUSES, 'no-card', 'no'], 'choose one of the statuses')),
  /** Something lapses from today through this day. */
  lapsesBy: z.exactOptional(dateField),
  sort: z.exactOptional(z.enum(PEOPLE_SORTS)),
  descending: z.exactOptional(z.boolean()),
  page: z.exactOptional(z.int().min(1)),
  /** All pages at once, to be taken out. */
  whole: z.exactOptional(z.literal(true)),
  ...thenFields,
})
export type PeopleAsked = z.infer<typeof peopleListSchema>
