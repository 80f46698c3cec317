import type { z } from 'zod'
import { PROGRAM_FORMAT, programSchema, type Program } from '../../lib/core/program/program.schema.ts'
import { endings, extensions, lifts, resolutions, suspensions } from './card-changes.ts'
import { cardsCarriedIn } from './cards-carried-in.ts'
import { cardsDecided } from './cards-decided.ts'
import { certificates } from './certificates.ts'
import { assignments, classItems, classRatings } from './classes.ts'
import { FEDERAL } from './draft.ts'
import { entries } from './entries.ts'
import { expectedWork } from './expected-work.ts'
import { hitchesOfSeason, placements } from './hitches.ts'
import { surveyedItems } from './items.ts'
import { memberships, permissions } from './memberships.ts'
import { people } from './people.ts'
import { organisations, places } from './places.ts'
import { adopted, confirmations, inventedEditions } from './rulebooks.ts'
import { raises, surveyRatings } from './surveys.ts'
import { designations } from './trainers.ts'

/** Puts the whole invented program together, the same every time; throws where a shape is wrong. */
export function demoProgram(): Program {
  const program: z.input<typeof programSchema> = {
    format: PROGRAM_FORMAT,
    draft: true,
    invented: true,
    program: {
      id: 'ashlar-range',
      name: 'Ashlar Range Saw Program (invented demonstration)',
      timeZone: 'America/Denver',
      book: FEDERAL,
      firstDayOfDeciding: '2025-04-01',
    },
    entries,
    books: adopted.books,
    editions: [...inventedEditions, ...adopted.editions],
    confirmations,
    organisations,
    places,
    people,
    memberships,
    permissions,
    certificates,
    designations,
    cards: [...cardsCarriedIn, ...cardsDecided],
    endings,
    resolutions,
    extensions: [...adopted.extensions, ...extensions],
    suspensions,
    lifts,
    items: [...surveyedItems, ...classItems],
    expectedWork,
    ratings: [...surveyRatings, ...classRatings],
    raises,
    assignments,
    cautions: adopted.cautions,
    hitches: hitchesOfSeason,
    placements,
  }
  return programSchema.parse(program)
}
