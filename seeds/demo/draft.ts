import type { z } from 'zod'
import type { sectionSchemas } from '../../lib/core/program/program.schema.ts'

/** A fact of a section as a file writes it, before it is parsed. */
export type Draft<Name extends keyof typeof sectionSchemas> = z.input<(typeof sectionSchemas)[Name]>

/** Everything here is made up, and says so wherever it could be taken for something else. */
export const INVENTED = 'Invented for the demonstration; not a published text.'

/** The agency's own staff. */
export const STAFF = 'ashlar-range-staff'
/** The partner whose people are volunteers. */
export const LANTERN_CREEK = 'lantern-creek-volunteers'
/** The partner whose people are young. */
export const HALDEN = 'halden-youth-corps'
/** A firm that works here under a contract. */
export const GANNET_FOLD = 'gannet-fold-trailworks'

/** The book that governs where no place names another. */
export const FEDERAL = 'federal-crosscut'
/** The book of the volunteers. */
export const COOPERATOR = 'cooperator-crosscut'
/** The book of the power-saw fallers. */
export const FALLER = 'interagency-faller'
