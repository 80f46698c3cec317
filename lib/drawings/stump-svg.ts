import { layFinding } from '../core/evaluations/lay.ts'
import type { CutFinding } from '../core/evaluations/cut-findings.ts'
import type { FelledCut } from '../core/evaluations/cut-record.schema.ts'
import { sideParts } from './stump-from-side.ts'
import { stumpGeometry, type StumpFromAbove, type StumpGeometry } from './stump-geometry.ts'
import type { StumpWords } from './stump-words.ts'
import { drawing, label, line, scaleBar } from './svg-marks.ts'
import { element, length } from './svg-text.ts'

/**
 * The stump from above and from its right side, to one scale, with what the rules allow drawn in, as an SVG document.
 * `data-scale` says how many units an inch takes, so that the measurements can be read back from its coordinates. Shapes
 * and lines differ by more than colour; no text is under 14 units.
 */
export function stumpSvg(cut: FelledCut, findings: readonly CutFinding[], words: StumpWords): string {
  const drawn = stumpGeometry(cut, findings)
  const { scale, width, height } = drawn
  const inside = [
    ...aboveParts(drawn.above, words),
    ...layParts(cut, drawn.above, words),
    ...sideParts(drawn.side, words),
    ...footParts(drawn, cut, words),
  ]
  return drawing({ width, height, scale, title: words.title, desc: words.desc, name: 'stump' }, inside)
}

function aboveParts({ centre: [x, y], radius, face, hinge }: StumpFromAbove, words: StumpWords): string[] {
  const circle = { cx: x, cy: y, r: radius }
  const stump = element('circle', { class: 'wood', 'data-part': 'stump', ...circle })
  const title = label(x - radius - 150, y - radius - 50, words.fromAbove)
  if (face === undefined) return [stump, title]
  const right = x + radius
  const half = Math.sqrt(Math.max(0, radius ** 2 - (face.x - x) ** 2))
  const bands = face.allowed.map(({ rule, least = right, most = x - radius }) =>
    element('rect', {
      ...{ class: 'allowed', 'data-rule': rule, 'clip-path': 'url(#stump-round)' },
      ...{ x: Math.min(least, most), y: y - radius, width: Math.abs(least - most), height: 2 * radius },
    }),
  )
  const thick = (hinge?.thickness ?? []).flatMap(({ rule, most }) =>
    most === undefined ? [] : [line([most, y - half], [most, y + half], 'edge', { 'data-rule': rule })],
  )
  const long = (hinge?.length ?? []).flatMap(({ rule, least, most }) =>
    [least, most].flatMap((units) =>
      units === undefined
        ? []
        : [-units / 2, units / 2].map((off) =>
            line([face.x - 16, y + off], [face.x + 16, y + off], 'edge', { 'data-rule': rule }),
          ),
    ),
  )
  return [
    element('clipPath', { id: 'stump-round' }, element('circle', circle)),
    stump,
    ...bands,
    line([face.x, y - half], [face.x, y + half], 'cut', { 'data-part': 'face' }),
    ...(hinge === undefined
      ? []
      : [
          element('polygon', {
            class: hinge.isLengthMeasured ? 'hinge' : 'hinge unmeasured',
            'data-part': 'hinge',
            points: hinge.corners.map((corner) => corner.map(length).join(',')).join(' '),
            ...(hinge.isLengthMeasured ? {} : { 'fill-opacity': 0.5 }),
          }),
        ]),
    ...thick,
    ...long,
    line([face.x, y - radius - 10], [right, y - radius - 10], 'measure'),
    title,
    label((face.x + right) / 2, y - radius - 18, words.faceDepth, 'middle'),
    ...(hinge === undefined ? [] : hingeLabels(hinge.corners, words)),
  ]
}

function hingeLabels(
  [, , right, left]: readonly (readonly [number, number])[],
  words: StumpWords,
): readonly string[] {
  if (left === undefined || right === undefined) return []
  return [
    label(left[0] - 16, left[1] + 22, words.hingeLeft, 'end'),
    label(right[0] - 16, right[1] - 14, words.hingeRight, 'end'),
    label(Math.min(left[0], right[0]) - 16, (left[1] + 2 * right[1]) / 3, words.hingeLength, 'end'),
  ]
}

function layParts(cut: FelledCut, { centre, radius }: StumpFromAbove, words: StumpWords): string[] {
  if (cut.lay === undefined) return []
  const { off, meant, waysOut } = layFinding(cut.lay, cut.height)
  const [x, y] = centre
  const towards = (degrees: number, reach: number) => {
    const radians = (degrees * Math.PI) / 180
    return [x + reach * Math.cos(radians), y + reach * Math.sin(radians)] as const
  }
  const north = towards(-meant, 26)
  const corner = [x + radius + 150, y - radius - 30] as const
  return [
    line(towards(0, radius), towards(0, radius + 46), 'gone', { 'data-part': 'lay-meant' }),
    line(centre, towards(off, radius + 46), 'cut', {
      'data-part': 'lay-found',
      'marker-end': 'url(#arrow)',
    }),
    ...waysOut.map((way) => line(towards(way - meant, radius), towards(way - meant, radius + 40), 'gone')),
    line(corner, [corner[0] + north[0] - x, corner[1] + north[1] - y], 'cut', {
      'data-part': 'north',
      'marker-end': 'url(#arrow)',
    }),
    label(corner[0] + (north[0] - x) * 1.6, corner[1] + (north[1] - y) * 1.6 + 5, words.north, 'middle'),
    label(x + radius + 54, y - 14, words.layFound),
    label(x + radius + 54, y + 24, words.layMeant),
  ]
}

function footParts(
  { scale, height, above, side }: StumpGeometry,
  cut: FelledCut,
  words: StumpWords,
): string[] {
  return [
    ...scaleBar([side.left, height - 72], scale, cut.diameter, words.inches),
    ...words.legend.map((text, at) =>
      label(above.centre[0] - above.radius - 150, height - 36 + at * 20, text),
    ),
  ]
}
