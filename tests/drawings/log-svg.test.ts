import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { buckedCutSchema, type BuckedCut } from '../../lib/core/evaluations/log-record.schema.ts'
import { LOG_SIDES } from '../../lib/core/rulebooks/words.ts'
import { logSvg } from '../../lib/drawings/log-svg.ts'
import { logWords } from '../../lib/wording/log-findings.ts'
import { at, elements, part } from './read-svg.ts'

const draw = (log: BuckedCut) => logSvg(log, logWords('A log', log, []))
const inches = (least: number, most: number) =>
  fc.integer({ min: least * 16, max: most * 16 }).map((sixteenths) => sixteenths / 16)

const bucked = inches(4, 60).chain((diameter) =>
  fc
    .record({
      cuts: fc.array(fc.record({ from: fc.constantFrom(...LOG_SIDES), depth: inches(1, 4) }), {
        minLength: 1,
        maxLength: 8,
      }),
      offset: inches(0, 6),
    })
    .map((more) => buckedCutSchema.parse({ diameter, ...more })),
)

describe('the drawing of a log', () => {
  it('gives the depth of every cut, its side and the offset again when it is read back', () => {
    fc.assert(
      fc.property(bucked, (log) => {
        const svg = draw(log)
        const scale = Number(elements(svg, 'role', 'img')[0]?.['data-scale'])
        const circle = part(svg, 'log')
        expect((2 * at(circle, 'r')) / scale).toBeCloseTo(log.diameter, 3)
        const { cuts = [], offset = 0 } = log
        cuts.forEach(({ from, depth }, index) => {
          const arrow = part(svg, `depth-${index + 1}`)
          const [dx, dy] = [at(arrow, 'x2') - at(arrow, 'x1'), at(arrow, 'y2') - at(arrow, 'y1')]
          const towards = { top: [0, 1], bottom: [0, -1], left: [1, 0], right: [-1, 0] }[from]
          expect((dx * (towards[0] ?? 0) + dy * (towards[1] ?? 0)) / scale).toBeCloseTo(depth, 2)
          const chord = part(svg, `end-${index + 1}`)
          const reach = Math.hypot(at(chord, 'x2') - at(chord, 'x1'), at(chord, 'y2') - at(chord, 'y1'))
          // The chord of a circle at a depth, by geometry: 2·√(d·(D−d)).
          expect(reach / scale).toBeCloseTo(2 * Math.sqrt(depth * (log.diameter - depth)), 2)
        })
        const first = cuts.findIndex(({ from }) => from === 'top' || from === 'bottom')
        const other = cuts.findIndex(
          ({ from }) => from === (cuts[first]?.from === 'top' ? 'bottom' : 'top') && first >= 0,
        )
        if (other < 0) return
        const [one, two] = [part(svg, `side-${first + 1}`), part(svg, `side-${other + 1}`)]
        expect((at(two, 'x1') - at(one, 'x1')) / scale).toBeCloseTo(offset, 2)
      }),
    )
  })

  it('is named for whoever does not see it, and says each cut in words', () => {
    const svg = draw(
      buckedCutSchema.parse({
        diameter: 22,
        cuts: [
          { from: 'top', depth: 7.5 },
          { from: 'left', depth: 4 },
        ],
      }),
    )
    expect(svg).toContain('Cut 1 from the top, 7 1/2 in deep. Cut 2 from the left, 4 in deep.')
    expect(svg).toContain('aria-labelledby="log-title log-desc"')
    expect(elements(svg, 'data-part', 'side-2')).toEqual([])
  })
})
