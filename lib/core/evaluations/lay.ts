/** How a tree lay beside how it was meant to: recorded, and not judged. */
export type LayFinding = {
  meant: number
  found: number
  /** In degrees: to the right above 0, to the left below, from −180 up to and with 180. */
  off: number
  /** By how many feet its top missed, where its height is known; past a right angle that is its whole height. */
  missedBy?: number
  /** It lay past a right angle from where it was meant to. */
  isWrongSide: boolean
  /** The ways out, 45° to the rear on either side of the lay that was meant. */
  waysOut: readonly [number, number]
}

const TURN = 360
const REARWARDS = 135

/**
 * @param lay in degrees clockwise from north, meant and found
 * @param height of the tree in feet
 */
export function layFinding(
  { meant, found }: { meant: number; found: number },
  height: number | undefined,
): LayFinding {
  const off = TURN / 2 - azimuth(TURN / 2 - (found - meant))
  const isWrongSide = Math.abs(off) > 90
  const missedBy = (of: number) => (isWrongSide ? of : of * Math.sin((Math.abs(off) * Math.PI) / 180))
  return {
    ...{ meant, found, off, isWrongSide },
    ...(height === undefined ? {} : { missedBy: missedBy(height) }),
    waysOut: [azimuth(meant + REARWARDS), azimuth(meant - REARWARDS)],
  }
}

/** A direction from 0 up to 360. */
function azimuth(degrees: number): number {
  return ((degrees % TURN) + TURN) % TURN
}
