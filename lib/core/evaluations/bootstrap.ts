import type { Figure } from './figure.ts'
import { emptyCells, type Square } from './square.ts'

const MODULUS = 2_147_483_647
const MULTIPLIER = 16_807

/** The seeds that there are. */
export const SEEDS = { least: 1, most: MODULUS - 1 } as const

/**
 * The next number after one: the minimal standard generator of Park and Miller (Communications of the ACM 31, 1988). It is
 * small, the same on every machine, and good enough to draw units.
 * @param seed from 1 through 2,147,483,646, as is what comes
 */
export function nextDrawn(seed: number): number {
  // Below 2^46, so that the product is exact.
  return (seed * MULTIPLIER) % MODULUS
}

/** The part of the draws that lies in an interval. */
const MIDDLE = 0.95

/** An interval of draws, and how many of them had no figure. */
export type Interval = { low: number; high: number; draws: number; undefinedDraws: number; seed: number }

/**
 * The interval in which the middle 95 per cent of the figures lie of so many draws of as many units, with replacement
 * (Efron's percentile interval). Nothing where no draw has a figure. Of few units, a dozen or so, it is somewhat narrow.
 * @param units what each unit adds to the counts from which the figure is taken
 */
export function bootstrapInterval(
  units: readonly (readonly number[])[],
  size: number,
  figureOf: (summed: Square) => Figure,
  { draws, seed }: { draws: number; seed: number },
): Interval | undefined {
  const found: number[] = []
  let drawn = seed
  for (let draw = 0; draw < draws; draw += 1) {
    const cells = emptyCells(size)
    for (let at = 0; at < units.length; at += 1) {
      drawn = nextDrawn(drawn)
      const unit = units[Math.floor((drawn / MODULUS) * units.length)] ?? []
      for (let cell = 0; cell < cells.length; cell += 1) cells[cell] = (cells[cell] ?? 0) + (unit[cell] ?? 0)
    }
    const figure = figureOf({ size, cells })
    if (figure.kind === 'value') found.push(figure.value)
  }
  const sorted = Float64Array.from(found).sort()
  const low = quantile(sorted, (1 - MIDDLE) / 2)
  const high = quantile(sorted, (1 + MIDDLE) / 2)
  return low === undefined || high === undefined
    ? undefined
    : { low, high, draws, undefinedDraws: draws - found.length, seed }
}

/** Between the two nearest of the sorted figures, by how near each is. */
function quantile(sorted: Float64Array, part: number): number | undefined {
  const at = (sorted.length - 1) * part
  const below = sorted[Math.floor(at)]
  const above = sorted[Math.ceil(at)]
  return below === undefined || above === undefined
    ? undefined
    : below + (above - below) * (at - Math.floor(at))
}
