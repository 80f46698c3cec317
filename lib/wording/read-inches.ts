import { isInches, writeInches, type Inches } from '../core/kernel/measures.ts'
import { refusal, success, type Result } from '../core/kernel/result.ts'

/** The greatest measure that is read, in inches. */
const MOST_INCHES = 400
const SHAPE = /^(\d{1,6}(?:\.\d{1,9})?)?(?:(^| +)(\d{1,4})\/(\d{1,4}))?(?: *(?:in|"))?$/

/**
 * Inches as people write them: `22`, `22.5`, `22 1/2`, `24 1/16`, `1/2`, with `in` after them or not. Only whole
 * sixteenths are read; the problem is a sentence that names the nearest ones.
 */
export function readInches(text: string): Result<Inches, string> {
  const parts = SHAPE.exec(text.trim())
  const [, whole, , over, under] = parts ?? []
  if (parts === null || (whole === undefined && over === undefined)) {
    return refusal('Inches are written 22, 22.5, 22 1/2 or 24 1/16.')
  }
  if (over !== undefined && (Number(under) === 0 || whole?.includes('.') === true)) {
    return refusal('A fraction of an inch is written like 22 1/2, with a whole number before it.')
  }
  const value = Number(whole ?? 0) + (over === undefined ? 0 : Number(over) / Number(under))
  if (value <= 0) return refusal('A measure in inches is above 0.')
  if (value > MOST_INCHES) return refusal(`A measure in inches is at most ${MOST_INCHES}.`)
  if (isInches(value)) return success(value)
  const below = Math.floor(value * 16) / 16
  const nearest = [below, below + 1 / 16].filter(isInches).map(writeInches)
  return refusal(`Inches are whole sixteenths. The nearest to this: ${nearest.join(' and ')}.`)
}
