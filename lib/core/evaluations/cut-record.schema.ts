import { z } from 'zod'
import { inchesField } from '../kernel/fields.schema.ts'
import { isInches, type Inches } from '../kernel/measures.ts'
import { FACE_TYPES } from '../rulebooks/words.ts'

/** A length that may be nothing: 0, or whole sixteenths of an inch. */
const lengthField = z
  .number()
  .refine(
    (value): value is Inches => value === 0 || isInches(value),
    'a length is 0 or whole sixteenths of an inch',
  )
/** A height over another cut: whole sixteenths of an inch, less than 0 where it lies below. */
const heightField = z
  .number()
  .refine((value) => value === 0 || isInches(Math.abs(value)), 'a height is whole sixteenths of an inch')
/** Whole or half degrees. */
const degrees = (most: number) =>
  z
    .number()
    .min(0, 'degrees are 0 or more')
    .max(most, `degrees are at most ${most}`)
    .multipleOf(0.5, 'degrees are whole or half')
/** A direction on the ground, clockwise from north. */
const azimuthField = degrees(359.5)

/** The measurements of a felled tree's stump, in inches and degrees; what nobody measured is left out. */
export const felledCutSchema = z.strictObject({
  /** Across the stump at the cut. */
  diameter: inchesField,
  faceType: z.enum(FACE_TYPES),
  faceDepth: z.exactOptional(lengthField),
  faceAngle: z.exactOptional(degrees(180)),
  /** Thickness at the two ends, seen from behind the tree towards its lay. */
  hinge: z.exactOptional(z.strictObject({ left: lengthField, right: lengthField })),
  hingeLength: z.exactOptional(lengthField),
  /** How far the back cut lies above the face, at its corner; below it less than 0. */
  backCut: z.exactOptional(heightField),
  /** How far one cut of the face runs past the other; 0 where they meet. */
  dutchman: z.exactOptional(lengthField),
  stumpHeight: z.exactOptional(lengthField),
  lay: z.exactOptional(z.strictObject({ meant: azimuthField, found: azimuthField })),
  /** The tree's height in feet. */
  height: z.exactOptional(z.number().positive().max(400)),
  /** Pulled over by a line or a machine. */
  pulled: z.exactOptional(z.literal(true)),
  /** The two letters of the state where it stood. */
  state: z.exactOptional(z.string().regex(/^[A-Z]{2}$/, 'a state is its two letters, like MI')),
})
/** A felled tree's stump as it was measured. */
export type FelledCut = z.infer<typeof felledCutSchema>
