import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../lib/core/evaluations/cut-findings.ts'
import { felledCutSchema, type FelledCut } from '../../lib/core/evaluations/cut-record.schema.ts'
import { cutRulesOf } from '../../lib/core/rulebooks/cut-rules.ts'
import { FACE_TYPES } from '../../lib/core/rulebooks/words.ts'
import { stumpSvg } from '../../lib/drawings/stump-svg.ts'
import { stumpWords } from '../../lib/wording/stump-drawing.ts'
import { shippedBookFiles } from '../builders/shipped-book-files.ts'
import { at, elements, part, points } from './read-svg.ts'

const RULES = cutRulesOf(
  shippedBookFiles()
    .flatMap(({ editions }) => editions)
    .filter(({ id }) => id === 'federal-crosscut-2016')
    .flatMap(({ rules }) => rules),
)

function draw(cut: FelledCut, name = 'A cut'): string {
  const found = findingsOf(cut, RULES)
  return stumpSvg(cut, found.findings, stumpWords(name, cut, found))
}

const cut = (more: object): FelledCut =>
  felledCutSchema.parse({ diameter: 22, faceType: 'conventional', ...more })

/** The measurements of a stump, from nothing but the coordinates of its drawing and its scale. */
function readBack(svg: string) {
  const scale = Number(elements(svg, 'role', 'img')[0]?.['data-scale'])
  const stump = part(svg, 'stump')
  const right = at(stump, 'cx') + at(stump, 'r')
  const face = part(svg, 'face')
  const [[x1 = 0, top = 0] = [], [, foot = 0] = [], [rightEnd = 0] = [], [leftEnd = 0] = []] = points(
    part(svg, 'hinge'),
  )
  const tree = part(svg, 'face-on-tree')
  const edge = part(svg, 'face-on-stump')
  const slope = (of: Readonly<Record<string, string>>) =>
    (Math.atan2(at(of, 'y1') - at(of, 'y2'), at(of, 'x2') - at(of, 'x1')) * 180) / Math.PI
  const level = at(edge, 'y1')
  const found = part(svg, 'lay-found')
  return {
    diameter: (2 * at(stump, 'r')) / scale,
    faceDepth: (right - at(face, 'x1')) / scale,
    hinge: { left: (x1 - leftEnd) / scale, right: (x1 - rightEnd) / scale },
    hingeLength: (foot - top) / scale,
    faceAngle: slope(tree) - slope(edge),
    backCut: (level - at(part(svg, 'back-cut'), 'y1')) / scale,
    stumpHeight: (at(part(svg, 'ground'), 'y1') - level) / scale,
    off: (Math.atan2(at(found, 'y2') - at(found, 'y1'), at(found, 'x2') - at(found, 'x1')) * 180) / Math.PI,
  }
}

const inches = (least: number, most: number) =>
  fc.integer({ min: least * 16, max: most * 16 }).map((sixteenths) => sixteenths / 16)

const measured = inches(6, 60).chain((diameter) =>
  fc.record({
    diameter: fc.constant(diameter),
    faceType: fc.constantFrom(...FACE_TYPES),
    faceDepth: inches(1, 3),
    faceAngle: fc.integer({ min: 20, max: 240 }).map((halves) => halves / 2),
    hinge: fc.record({ left: inches(0, 2), right: inches(0, 2) }),
    hingeLength: inches(1, 6),
    backCut: inches(-3, 6),
    stumpHeight: inches(0, 36),
    lay: fc.record({ meant: fc.nat({ max: 359 }), found: fc.nat({ max: 359 }) }),
  }),
)

describe('the drawing of a stump', () => {
  it('gives the measurements again when it is read back', () => {
    fc.assert(
      fc.property(measured, (drawn) => {
        const read = readBack(draw(cut(drawn)))
        const { lay, faceType: _faceType, ...lengths } = drawn
        // A thousandth of a unit of the drawing is less than a tenth of a sixteenth of an inch at every scale.
        for (const [key, value] of Object.entries(lengths)) {
          if (key === 'hinge' || key === 'faceAngle') continue
          expect(Math.abs(Number(Reflect.get(read, key)) - Number(value))).toBeLessThan(0.006)
        }
        expect(Math.abs(read.hinge.left - drawn.hinge.left)).toBeLessThan(0.006)
        expect(Math.abs(read.hinge.right - drawn.hinge.right)).toBeLessThan(0.006)
        expect(Math.abs(read.faceAngle - drawn.faceAngle)).toBeLessThan(0.1)
        const turned = (((read.off - (lay.found - lay.meant)) % 360) + 360) % 360
        expect(Math.min(turned, 360 - turned)).toBeLessThan(0.1)
      }),
    )
  })

  it('holds everything that is drawn, whatever was measured', () => {
    fc.assert(
      fc.property(measured, (drawn) => {
        const svg = draw(cut(drawn))
        const [, , width = 0, height = 0] = (elements(svg, 'role', 'img')[0]?.['viewBox'] ?? '')
          .split(' ')
          .map(Number)
        for (const each of ['cut', 'wood', 'hinge', 'gone'].flatMap((name) => elements(svg, 'class', name))) {
          const xs = [each['x1'], each['x2'], each['x']].flatMap((x) => (x === undefined ? [] : [Number(x)]))
          const ys = [each['y1'], each['y2'], each['y']].flatMap((y) => (y === undefined ? [] : [Number(y)]))
          for (const [x = 0, y = 0] of points(each).filter(([, y]) => y !== undefined)) {
            xs.push(x)
            ys.push(y)
          }
          for (const x of xs) expect(x >= 0 && x <= width, `x ${x} of ${width}`).toBe(true)
          for (const y of ys) expect(y >= 0 && y <= height, `y ${y} of ${height}`).toBe(true)
        }
      }),
    )
  })

  // OSHA Logging eTool (2008): of 24 inches the face is 6 to 8 deep, the hinge at most 2.4 thick (a tenth).
  it('draws in what the rules allow, to the same scale', () => {
    const svg = draw(cut({ diameter: 24, faceDepth: 7, hinge: { left: 2, right: 2 }, hingeLength: 20 }))
    const scale = Number(elements(svg, 'role', 'img')[0]?.['data-scale'])
    const stump = part(svg, 'stump')
    const right = at(stump, 'cx') + at(stump, 'r')
    const [depth] = elements(svg, 'data-rule', 'cut.face-depth')
    if (depth === undefined) throw new Error('no band')
    expect((right - at(depth, 'x')) / scale).toBeCloseTo(8, 2)
    expect((right - at(depth, 'x') - at(depth, 'width')) / scale).toBeCloseTo(6, 2)
    const [thick] = elements(svg, 'data-rule', 'cut.hinge-thickness')
    if (thick === undefined) throw new Error('no line')
    expect((at(part(svg, 'face'), 'x1') - at(thick, 'x1')) / scale).toBeCloseTo(2.4, 2)
  })

  it('leaves out what was not measured', () => {
    const svg = draw(cut({}))
    expect(elements(svg, 'data-part', 'stump')).toHaveLength(1)
    for (const name of ['face', 'hinge', 'hinge-side', 'back-cut', 'ground', 'lay-found', 'face-on-tree'])
      expect(elements(svg, 'data-part', name)).toEqual([])
    expect(svg).toContain('What was not measured is not drawn.')
  })

  it('is named for whoever does not see it, and a name cannot leave its place', () => {
    const svg = draw(cut({ faceDepth: 6 }), '<script>&"')
    expect(svg).toContain('<title id="stump-title">&lt;script&gt;&amp;"')
    expect(svg).not.toContain('<script')
    expect(svg).toMatch(/role="img" aria-labelledby="stump-title stump-desc"/)
  })
})
