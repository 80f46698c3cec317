/** What is allowed of a figure; the ends belong to it, but for `moreThan`. */
export type Bounds = {
  readonly least?: number | undefined
  readonly most?: number | undefined
  readonly moreThan?: number | undefined
}

/** Where a measured figure lies in what is allowed, and how far outside. */
export type Band = Bounds & ({ verdict: 'within' } | { verdict: 'under' | 'over'; by: number })

/** Less than half of a sixteenth of an inch is the rounding of a share, and no measurement. */
const ROUNDING = 1e-9

/** Compares a measured figure with what is allowed. The ends of a band are in. */
export function within(measured: number, { least, most, moreThan }: Bounds): Band {
  const bounds = {
    ...(least === undefined ? {} : { least }),
    ...(most === undefined ? {} : { most }),
    ...(moreThan === undefined ? {} : { moreThan }),
  }
  if (moreThan !== undefined && measured <= moreThan)
    return { ...bounds, verdict: 'under', by: moreThan - measured }
  if (least !== undefined && measured < least - ROUNDING)
    return { ...bounds, verdict: 'under', by: least - measured }
  if (most !== undefined && measured > most + ROUNDING)
    return { ...bounds, verdict: 'over', by: measured - most }
  return { ...bounds, verdict: 'within' }
}

/**
 * The chord of a round stump at a depth of the face, in the unit of both: 2·√(d·(D−d)). At a fifth of the diameter it is
 * four fifths of it.
 */
export function mostByChord(depth: number, diameter: number): number {
  return 2 * Math.sqrt(depth * Math.max(0, diameter - depth))
}
