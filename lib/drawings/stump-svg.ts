import { layFinding } from '../core/evaluations/lay.ts'
import type { CutFinding } from '../core/evaluations/cut-findings.ts'
import type { FelledCut } from '../core/evaluations/cut-record.schema.ts'
import { sideParts } from './stump-from-side.ts'
import { stumpGeometry, type StumpFromAbove, type StumpGeometry } from './stump-geometry.ts'
import type { StumpWords } from './stump-words.ts'
import { label, line } from './svg-marks.ts'
import { element, escaped, length } from './svg-text.ts'

const STYLE = [
  'text{font:14px sans-serif;fill:#111;fill:var(--ink,#111)}',
  '.wood{fill:#ecdcb9;fill:var(--wood,#ecdcb9);stroke:#111;stroke:var(--ink,#111);stroke-width:2}',
  '.hinge{fill:#111;fill:var(--ink,#111)}',
  '.cut{stroke:#111;stroke:var(--ink,#111);stroke-width:2;fill:none}',
  '.measure{stroke:#111;stroke:var(--ink,#111);stroke-width:1;fill:none}',
  '.gone{stroke:#555;stroke:var(--ink-soft,#555);stroke-width:1.5;stroke-dasharray:2 4;fill:none}',
  '.allowed{fill:#7a4a12;fill:var(--tolerance,#7a4a12);fill-opacity:.22}',
  '.edge{stroke:#7a4a12;stroke:var(--tolerance,#7a4a12);stroke-width:1.5;stroke-dasharray:7 4;fill:none}',
  '.paper{fill:#fff;fill:var(--paper,#fff)}',
].join('')

const ARROW = element(
  'marker',
  {
    ...{ id: 'stump-arrow', viewBox: '0 0 10 10', refX: 9, refY: 5 },
    ...{ markerWidth: 6, markerHeight: 6, orient: 'auto' },
  },
  element('path', { class: 'hinge', d: 'M0 1L10 5L0 9Z' }),
)

const BARS = [50, 20, 10, 5, 2, 1] as const

/**
 * The stump from above and from its right side, to one scale, with what the rules allow drawn in, as an SVG document.
 * `data-scale` says how many units an inch takes, so that the measurements can be read back from its coordinates. Shapes
 * and lines differ by more than colour; no text is under 14 units.
 */
export function stumpSvg(cut: FelledCut, findings: readonly CutFinding[], words: StumpWords): string {
  const drawn = stumpGeometry(cut, findings)
  const { scale, width, height } = drawn
  const inside = [
    element('title', { id: 'stump-title' }, escaped(words.title)),
    element('desc', { id: 'stump-desc' }, escaped(words.desc)),
    element('style', {}, STYLE),
    ARROW,
    element('rect', { class: 'paper', width, height }),
    ...aboveParts(drawn.above, words),
    ...layParts(cut, drawn.above, words),
    ...sideParts(drawn.side, words),
    ...footParts(drawn, cut, words),
  ]
  return `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`,
      role: 'img',
      'aria-labelledby': 'stump-title stump-desc',
      'data-scale': String(scale),
    },
    `\n${inside.join('\n')}\n`,
  )}\n`
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
      'marker-end': 'url(#stump-arrow)',
    }),
    ...waysOut.map((way) => line(towards(way - meant, radius), towards(way - meant, radius + 40), 'gone')),
    line(corner, [corner[0] + north[0] - x, corner[1] + north[1] - y], 'cut', {
      'data-part': 'north',
      'marker-end': 'url(#stump-arrow)',
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
  const bar = BARS.find((inches) => inches <= cut.diameter / 2) ?? 1
  const [from, y] = [side.left, height - 72]
  return [
    line([from, y], [from + bar * scale, y], 'cut', { 'data-part': 'scale' }),
    line([from, y - 5], [from, y + 5], 'cut'),
    line([from + bar * scale, y - 5], [from + bar * scale, y + 5], 'cut'),
    label(from + bar * scale + 10, y + 5, words.inches(bar)),
    ...words.legend.map((text, at) =>
      label(above.centre[0] - above.radius - 150, height - 36 + at * 20, text),
    ),
  ]
}
