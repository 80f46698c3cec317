import { z } from 'zod'
import { dateField } from '../../core/calendar/dates.schema.ts'
import { knownAtField } from '../authority/question.schema.ts'

/** As known when, and as of which day: as now known and as of today, where it does not say. */
export const thenFields = {
  knownAt: z.exactOptional(knownAtField),
  day: z.exactOptional(dateField),
}
