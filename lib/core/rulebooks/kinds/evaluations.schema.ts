import { z } from 'zod'
import { isInches, type Inches } from '../../kernel/measures.ts'
import { FACE_TYPES } from '../words.ts'
import { ruleBase } from './common.schema.ts'

/** A part of the diameter, as a fraction, so that it is compared without rounding. */
const shareField = z.strictObject({ over: z.int().min(1).max(100), under: z.int().min(1).max(100) })
const inchesField = z.number().refine((value): value is Inches => value === 0 || isInches(value))
const degreesField = z.number().min(0).max(180).multipleOf(0.5)
const faceTypesField = z.array(z.enum(FACE_TYPES)).min(1)

/** Where a rule of a state governs: its two letters; without them it governs everywhere. */
const stateField = z.exactOptional(z.string().regex(/^[A-Z]{2}$/, 'a state is its two letters, like MI'))

/** A figure that goes by the diameter at the cut; `upTo` is the greatest diameter for which it is stated. */
const shareRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('cut.share'),
  figure: z.enum(['face-depth', 'hinge-thickness', 'hinge-length']),
  least: z.exactOptional(shareField),
  most: z.exactOptional(shareField),
  upTo: z.exactOptional(inchesField),
  state: stateField,
})

/** How wide a face of these types opens. */
const angleRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('cut.angle'),
  faceTypes: faceTypesField,
  least: z.exactOptional(degreesField),
  most: z.exactOptional(degreesField),
  state: stateField,
})

/**
 * How far above the face the back cut lies. `above` asks for more than level, by however little; trees that are pulled
 * over may be left out.
 */
const backCutRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('cut.back-cut'),
  faceTypes: faceTypesField,
  least: z.exactOptional(inchesField),
  most: z.exactOptional(inchesField),
  above: z.exactOptional(z.literal(true)),
  exceptPulled: z.exactOptional(z.literal(true)),
  state: stateField,
})

/** A length that has a most, whatever the diameter. */
const lengthRule = z.strictObject({
  ...ruleBase,
  kind: z.literal('cut.length'),
  figure: z.enum(['stump-height', 'dutchman']),
  most: inchesField,
  state: stateField,
})

/** The kinds of rule about the measurements of a cut. */
export const cutRules = [shareRule, angleRule, backCutRule, lengthRule] as const
/** A rule about one measurement of a cut. */
export type CutRule = z.infer<(typeof cutRules)[number]>
