/** The words of a drawing; a label that is left out is not written. */
export type StumpWords = {
  title: string
  /** The drawing in sentences, for whoever does not see it. */
  desc: string
  fromAbove: string
  fromSide: string
  /** What the lines mean, a line each. */
  legend: readonly string[]
  north: string
  /** A length on the bar of the scale. */
  inches: (count: number) => string
  faceDepth?: string
  hingeLeft?: string
  hingeRight?: string
  hingeLength?: string
  faceAngle?: string
  backCut?: string
  stumpHeight?: string
  layFound?: string
  layMeant?: string
}
