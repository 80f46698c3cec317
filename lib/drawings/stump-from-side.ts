import type { Allowance, StumpFromSide } from './stump-geometry.ts'
import { label, line } from './svg-marks.ts'
import type { StumpWords } from './stump-words.ts'
import { element, length } from './svg-text.ts'

/** The elements of a stump seen from its right side. */
export function sideParts(side: StumpFromSide, words: StumpWords): string[] {
  const { left, right, level, corner, edges, back, ground, bottom } = side
  const foot = ground?.y ?? bottom
  const top = back?.end[1] ?? level
  const hingeBack = back?.end[0] ?? corner?.[0] ?? right
  const faceEnd = edges?.stump ?? ([right, level] as const)
  const outline = [
    [left, foot],
    [left, top],
    [hingeBack, top],
    [hingeBack, level],
    ...(corner === undefined ? [] : [corner]),
    faceEnd,
    [right, faceEnd[1]],
    [right, foot],
  ] as const
  return [
    label(left - 150, level - 40 - Math.max(0, level - top), words.fromSide),
    element('polygon', {
      ...{ class: 'wood', 'data-part': 'outline' },
      points: outline.map((point) => point.map(length).join(',')).join(' '),
    }),
    ...(back === undefined ? [] : back.allowed.map((each) => band(each, left, back.end[0], level))),
    ...(corner === undefined || back === undefined || corner[0] === back.end[0]
      ? []
      : [hinge(back.end, corner)]),
    ...(back === undefined ? [] : [line([left, top], back.end, 'cut', { 'data-part': 'back-cut' })]),
    ...(corner === undefined || edges === undefined
      ? []
      : [
          line(corner, edges.stump, 'cut', { 'data-part': 'face-on-stump' }),
          line(corner, edges.tree, 'gone', { 'data-part': 'face-on-tree' }),
          ...edges.allowed.map(({ rule, end }) => line(corner, end, 'edge', { 'data-rule': rule })),
          label(corner[0] + 34, level - 12, words.faceAngle),
        ]),
    ...(ground === undefined
      ? []
      : [
          line([left - 60, foot], [right + 60, foot], 'cut', { 'data-part': 'ground' }),
          ...ground.allowed.flatMap(({ rule, most }) =>
            most === undefined
              ? []
              : [line([right + 4, most], [right + 60, most], 'edge', { 'data-rule': rule })],
          ),
          line([right + 14, level], [right + 14, foot], 'measure'),
          label(right + 22, (level + foot) / 2 + 5, words.stumpHeight),
        ]),
    label(left - 10, (top + level) / 2 + 5, words.backCut, 'end'),
  ]
}

/** The wood that held, from the cut that lies lower up past the one that lies higher. */
function hinge([x, y]: readonly [number, number], [face, level]: readonly [number, number]): string {
  const upper = Math.min(y, level)
  const lower = Math.max(y, level)
  return element('rect', {
    ...{ class: 'hinge', 'data-part': 'hinge-side' },
    ...{ x, y: upper - STUB, width: face - x, height: lower - upper + STUB },
  })
}

/** How far the broken hinge stands up; a hint, and no measurement. */
const STUB = 8

/** What a rule allows of the back cut: a band, or a line where one side is open or both are one. */
function band({ rule, least, most }: Allowance, from: number, to: number, level: number): string {
  if (least === undefined || most === undefined || least === most)
    return line([from, least ?? most ?? level], [to, least ?? most ?? level], 'edge', { 'data-rule': rule })
  return element('rect', {
    ...{ class: 'allowed', 'data-rule': rule },
    ...{ x: from, y: Math.min(least, most), width: to - from, height: Math.abs(least - most) },
  })
}
