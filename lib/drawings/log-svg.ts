import type { BuckedCut } from '../core/evaluations/log-record.schema.ts'
import type { LogSide } from '../core/rulebooks/words.ts'
import { drawing, label, line, scaleBar } from './svg-marks.ts'
import { element } from './svg-text.ts'

/** The words of a drawing of a log; a label that is left out is not written. */
export type LogWords = {
  title: string
  /** The drawing in sentences, for whoever does not see it. */
  desc: string
  fromEnd: string
  fromSide: string
  /** One for each cut, in their order. */
  cuts: readonly string[]
  /** A length on the bar of the scale. */
  inches: (count: number) => string
  offset?: string
}

const WIDE = 260
const MARGIN = { left: 30, top: 60, between: 70, right: 240, bottom: 60 }
const ROW = 22

type Point = readonly [x: number, y: number]

/**
 * A log from its thicker end and from the side, its cuts by number, to one scale, as an SVG document. `data-scale` says
 * how many units an inch takes, so that depths and offset can be read back from its coordinates.
 */
export function logSvg(log: BuckedCut, words: LogWords): string {
  const scale = WIDE / log.diameter
  const radius = WIDE / 2
  const cuts = log.cuts ?? []
  const centre: Point = [MARGIN.left + radius, MARGIN.top + radius]
  const top = MARGIN.top + WIDE + MARGIN.between
  const apart = (log.offset ?? 0) * scale
  const length = Math.max(1.6 * WIDE, apart + WIDE)
  const width = MARGIN.left + Math.max(length, WIDE + MARGIN.right) + MARGIN.left
  const height = top + WIDE + MARGIN.bottom
  const inside = [
    label(MARGIN.left, MARGIN.top - 24, words.fromEnd),
    element('circle', { class: 'wood', 'data-part': 'log', cx: centre[0], cy: centre[1], r: radius }),
    ...cuts.flatMap(({ from, depth }, at) => endCut(centre, radius, from, depth * scale, at + 1)),
    ...words.cuts.map((text, at) => label(centre[0] + radius + 30, MARGIN.top + 20 + at * ROW, text)),
    label(MARGIN.left, top - 24, words.fromSide),
    element('rect', { class: 'wood', x: MARGIN.left, y: top, width: length, height: WIDE }),
    ...cuts.flatMap(({ from, depth }, at) => {
      const start = sideStart(from, top)
      if (start === undefined) return []
      // The first side cut lies in the middle; cuts from the other side lie the offset away from it.
      const x = MARGIN.left + (length - apart) / 2 + (from === firstUpright(log) ? 0 : apart)
      const end = start + (from === 'top' ? 1 : -1) * depth * scale
      return [
        line([x, start], [x, end], 'kerf', { 'data-part': `side-${at + 1}` }),
        label(x + 8, (start + end) / 2 + 5, String(at + 1)),
      ]
    }),
    label(MARGIN.left + (length + apart) / 2 + 26, top - 10, words.offset),
    ...scaleBar([MARGIN.left, height - 24], scale, log.diameter, words.inches),
  ]
  return drawing({ width, height, scale, title: words.title, desc: words.desc, name: 'log' }, inside)
}

/** From which of top and bottom the log was cut first. */
function firstUpright({ cuts = [] }: BuckedCut): LogSide | undefined {
  return cuts.find(({ from }) => from === 'top' || from === 'bottom')?.from
}

function sideStart(from: LogSide, top: number): number | undefined {
  return from === 'top' ? top : from === 'bottom' ? top + WIDE : undefined
}

/** A cut from the end: the chord that it reached, an arrow to it from its side, and its number. */
function endCut([x, y]: Point, radius: number, from: LogSide, depth: number, n: number): string[] {
  const reach = depth - radius
  const half = Math.sqrt(Math.max(0, radius ** 2 - reach ** 2))
  const turned = (along: number, across: number): Point => {
    switch (from) {
      case 'top':
        return [x + across, y + along]
      case 'bottom':
        return [x + across, y - along]
      case 'left':
        return [x + along, y + across]
      case 'right':
        return [x - along, y + across]
    }
  }
  const [numberX, numberY] = turned(-radius - 12, 0)
  return [
    line(turned(reach, -half), turned(reach, half), 'kerf', { 'data-part': `end-${n}` }),
    line(turned(-radius, 0), turned(reach, 0), 'measure', { 'data-part': `depth-${n}` }),
    label(numberX, numberY + 5, String(n), 'middle'),
  ]
}
