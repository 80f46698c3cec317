/** A length in inches, a whole number of sixteenths, so that it is exact in binary. */
export type Inches = number & { readonly __brand: 'Inches' }

const SIXTEENTHS = 16

/** Whether a number is a length in inches that may be kept: finite, above 0, a whole number of sixteenths. */
export function isInches(value: number): value is Inches {
  return Number.isFinite(value) && value > 0 && Number.isInteger(value * SIXTEENTHS)
}

/** Writes inches the way a rule is read: `24 1/16`, `24`, `1/2`. */
export function writeInches(value: Inches): string {
  const whole = Math.floor(value)
  let over = Math.round((value - whole) * SIXTEENTHS)
  if (over === 0) return String(whole)
  let under = SIXTEENTHS
  while (over % 2 === 0) {
    over /= 2
    under /= 2
  }
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`
}
