import type { CutFigure, CutFinding } from '../core/evaluations/cut-findings.ts'
import type { FelledCut } from '../core/evaluations/cut-record.schema.ts'
import { mostByChord } from '../core/evaluations/tolerances.ts'

/** A point of a drawing, in its units: x to the right, y downwards. */
export type Point = readonly [x: number, y: number]
/** What a rule allows, between two ends along one axis; an end that is left out is without limit. */
export type Allowance = { rule: string; least?: number; most?: number }

/** A stump from above, its tree meant to fall to the right. */
export type StumpFromAbove = {
  centre: Point
  radius: number
  /** Where the face ends, as x, and the x of what each rule allows; absent where its depth was not measured. */
  face?: { x: number; allowed: readonly Allowance[] }
  /** Corners of the hinge: at the face from its left to its right end, then at the back from its right to its left. */
  hinge?: {
    corners: readonly [Point, Point, Point, Point]
    isLengthMeasured: boolean
    thickness: readonly Allowance[]
    length: readonly Allowance[]
  }
}

/** The same stump from its right side, below the view from above and to the same scale. */
export type StumpFromSide = {
  left: number
  right: number
  /** Where the cuts of the face meet. */
  corner?: Point
  /** From the corner: the edge that stays on the stump, and the one that went with the tree. */
  edges?: { stump: Point; tree: Point; allowed: readonly { rule: string; end: Point }[] }
  /** Where the back cut ends at the hinge. */
  back?: { end: Point; allowed: readonly Allowance[] }
  /** The level of the face, as y. */
  level: number
  bottom: number
  ground?: { y: number; allowed: readonly Allowance[] }
}

/** Both views of a stump on one sheet; `scale` is how many units an inch takes. */
export type StumpGeometry = {
  scale: number
  width: number
  height: number
  above: StumpFromAbove
  side: StumpFromSide
}

const WIDE = 320
const TALL = 420
const MARGIN = { left: 170, right: 190, top: 76, between: 84, bottom: 118 }

/**
 * Places a stump by its measurements. What was not measured has no place; an open face, of which the opening alone is
 * measured, is laid half above the level of its corner and half below.
 */
export function stumpGeometry(cut: FelledCut, findings: readonly CutFinding[]): StumpGeometry {
  const { up, down } = heights(cut)
  const scale = Math.min(WIDE / cut.diameter, TALL / (up + down))
  const radius = (cut.diameter * scale) / 2
  const centre: Point = [MARGIN.left + radius, MARGIN.top + radius]
  const level = centre[1] + radius + MARGIN.between + up * scale
  const bottom = level + down * scale
  return {
    scale,
    width: MARGIN.left + 2 * radius + MARGIN.right,
    height: bottom + MARGIN.bottom,
    above: fromAbove(cut, findings, { scale, centre, radius }),
    side: fromSide(cut, findings, { scale, centre, radius, level, bottom }),
  }
}

/** How far the view from the side reaches over and under the level of the face, in inches. */
function heights(cut: FelledCut): { up: number; down: number } {
  const { backCut = 0, stumpHeight, diameter } = cut
  const { stump, tree } = faceRays(cut) ?? { stump: [0, 0] as const, tree: [0, 0] as const }
  return {
    up: Math.max(diameter / 12, backCut, tree[1]),
    down: Math.max(stumpHeight ?? diameter / 4, -backCut, -stump[1], diameter / 12),
  }
}

/** From the corner of the face, in inches and upwards: the edge on the stump, and the one on the tree. */
function faceRays({ faceType, faceDepth, faceAngle }: FelledCut): { stump: Point; tree: Point } | undefined {
  if (faceDepth === undefined || faceAngle === undefined) return undefined
  switch (faceType) {
    case 'conventional':
      return { stump: [faceDepth, 0], tree: ray(faceDepth, faceAngle) }
    case 'humboldt':
      return { stump: ray(faceDepth, -faceAngle), tree: [faceDepth, 0] }
    case 'open-face':
      return { stump: ray(faceDepth, -faceAngle / 2), tree: ray(faceDepth, faceAngle / 2) }
  }
}

/** An edge of a face to the bark, at most twice as long as the face is deep. */
function ray(depth: number, degrees: number): Point {
  const radians = (degrees * Math.PI) / 180
  const along = Math.cos(radians)
  const length = along > 0 ? Math.min(depth / along, 2 * depth) : depth
  return [length * along, length * Math.sin(radians)]
}

type Placed = { scale: number; centre: Point; radius: number }

function fromAbove(
  cut: FelledCut,
  findings: readonly CutFinding[],
  { scale, centre, radius }: Placed,
): StumpFromAbove {
  const { faceDepth, hinge, hingeLength, diameter } = cut
  if (faceDepth === undefined) return { centre, radius }
  const right = centre[0] + radius
  const x = right - faceDepth * scale
  const face = { x, allowed: allowances(findings, 'face-depth', (inches) => right - inches * scale) }
  if (hinge === undefined) return { centre, radius, face }
  const half = ((hingeLength ?? mostByChord(faceDepth, diameter)) * scale) / 2
  const [top, foot] = [centre[1] - half, centre[1] + half]
  return {
    ...{ centre, radius, face },
    hinge: {
      corners: [
        [x, top],
        [x, foot],
        [x - hinge.right * scale, foot],
        [x - hinge.left * scale, top],
      ],
      isLengthMeasured: hingeLength !== undefined,
      thickness: allowances(findings, 'hinge-thickness', (inches) => x - inches * scale),
      length: allowances(findings, 'hinge-length', (inches) => inches * scale),
    },
  }
}

function fromSide(
  cut: FelledCut,
  findings: readonly CutFinding[],
  { scale, centre, radius, level, bottom }: Placed & { level: number; bottom: number },
): StumpFromSide {
  const [left, right] = [centre[0] - radius, centre[0] + radius]
  const { faceDepth, faceAngle, backCut, hinge, stumpHeight } = cut
  const corner: Point | undefined = faceDepth === undefined ? undefined : [right - faceDepth * scale, level]
  const rays = faceRays(cut)
  const at = (from: Point, [x, y]: Point): Point => [from[0] + x * scale, from[1] - y * scale]
  return {
    ...{ left, right, level, bottom },
    ...(corner === undefined ? {} : { corner }),
    ...(corner === undefined || rays === undefined || faceAngle === undefined
      ? {}
      : {
          edges: {
            stump: at(corner, rays.stump),
            tree: at(corner, rays.tree),
            allowed: anglesOf(findings).flatMap(({ rule, degrees }) =>
              otherEdge(cut, degrees).map((ray) => ({ rule, end: at(corner, ray) })),
            ),
          },
        }),
    ...(corner === undefined || backCut === undefined
      ? {}
      : {
          back: {
            end: [corner[0] - (hinge?.right ?? 0) * scale, level - backCut * scale] as const,
            allowed: allowances(findings, 'back-cut', (inches) => level - inches * scale),
          },
        }),
    ...(stumpHeight === undefined ? {} : { ground: groundOf(stumpHeight, findings, { level, scale }) }),
  }
}

function groundOf(
  stumpHeight: number,
  findings: readonly CutFinding[],
  { level, scale }: { level: number; scale: number },
): { y: number; allowed: readonly Allowance[] } {
  const y = level + stumpHeight * scale
  return { y, allowed: allowances(findings, 'stump-height', (inches) => y - inches * scale) }
}

/** The edge that is not level, or both where a face is open, if it opened by so many degrees. */
function otherEdge(cut: FelledCut, faceAngle: number): readonly Point[] {
  const rays = faceRays({ ...cut, faceAngle })
  if (rays === undefined) return []
  return [rays.stump, rays.tree].filter(([, y]) => y !== 0)
}

function anglesOf(findings: readonly CutFinding[]): readonly { rule: string; degrees: number }[] {
  return allowances(findings, 'face-angle', (degrees) => degrees).flatMap(({ rule, least, most }) =>
    [least, most].flatMap((degrees) => (degrees === undefined ? [] : [{ rule, degrees }])),
  )
}

/** What each rule allows of a figure, placed; what must be more than a figure is at least that on a drawing. */
function allowances(
  findings: readonly CutFinding[],
  figure: CutFigure,
  place: (figure: number) => number,
): readonly Allowance[] {
  const found = findings.find((finding) => finding.figure === figure)
  return (found?.allowed ?? []).map(({ rule, least, most, moreThan }) => {
    const lowest = least ?? moreThan
    return {
      rule: rule.id,
      ...(lowest === undefined ? {} : { least: place(lowest) }),
      ...(most === undefined ? {} : { most: place(most) }),
    }
  })
}
