import { z } from 'zod'
import { hiddenInId, hiddenInName } from './hidden-characters.ts'
import { isInches } from './measures.ts'

/** Limits on what a field may hold; each is said in the message of the refusal. */
const LONGEST_ID = 64
const LONGEST_NAME = 200
const LONGEST_TEXT = 4000
const LONGEST_NUMBER = 40

/** The id of a record: small letters, digits and hyphens. */
export const idField = z
  .string()
  .regex(/^[a-z0-9-]{1,64}$/, `an id is 1 to ${LONGEST_ID} small letters, digits and hyphens`)

/** Neither control characters, nor line ends, nor half a surrogate pair: it must stand on one line of any output. */
const ONE_LINE = /^[^\p{Cc}\p{Cs}\p{Zl}\p{Zp}]*$/u
const WHOLE_LETTERS = /^(?:[^\p{Cc}\p{Cs}]|[\t\n\r])*$/u
const NOT_BLANK = /\S/

/** Too long a text is looked at no further: a pattern over millions of letters would exhaust the stack. */
const atMost = (most: number, what: string) => ({ error: `${what} has at most ${most} letters`, abort: true })

/** A name as people write it, in any script, on one line. */
export const nameField = z
  .string()
  .max(LONGEST_NAME, atMost(LONGEST_NAME, 'a name'))
  .regex(NOT_BLANK, 'a name may not be empty')
  .regex(ONE_LINE, 'a name stands on one line, without control characters')
  .refine((name) => hiddenInName(name) === undefined, 'a name has no characters that nobody sees')

/** The number of a card, as printed. */
export const cardNumberField = z
  .string()
  .max(LONGEST_NUMBER, atMost(LONGEST_NUMBER, 'a card number'))
  .regex(NOT_BLANK, 'a card number may not be empty')
  .regex(ONE_LINE, 'a card number stands on one line, without control characters')
  .refine((number) => hiddenInId(number) === undefined, 'a card number has no characters that nobody sees')

/** Free text in anybody's words, on one line or several. */
export const textField = z
  .string()
  .max(LONGEST_TEXT, atMost(LONGEST_TEXT, 'a text'))
  .regex(NOT_BLANK, 'the text may not be empty')
  .regex(WHOLE_LETTERS, 'a text has no control characters but tabs and line ends')

/** Inches as whole sixteenths, above 0 and at most 400. */
export const inchesField = z
  .number()
  .max(400, 'a measure in inches is at most 400')
  .refine(isInches, 'inches are multiples of 1/16, written 0.0625, and above 0')
