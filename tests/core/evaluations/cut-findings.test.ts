import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { doubtsOfCut, problemsOfCut } from '../../../lib/core/evaluations/check-cut.ts'
import { findingsOf, type CutFigure } from '../../../lib/core/evaluations/cut-findings.ts'
import { felledCutSchema, type FelledCut } from '../../../lib/core/evaluations/cut-record.schema.ts'
import { layFinding } from '../../../lib/core/evaluations/lay.ts'
import { mostByChord } from '../../../lib/core/evaluations/tolerances.ts'
import { cutRulesOf } from '../../../lib/core/rulebooks/cut-rules.ts'
import type { CutRule } from '../../../lib/core/rulebooks/kinds/evaluations.schema.ts'
import { shippedBookFiles } from '../../builders/shipped-book-files.ts'

const RULES = cutRulesOf(
  shippedBookFiles()
    .flatMap(({ editions }) => editions)
    .filter(({ id }) => id === 'federal-crosscut-2016')
    .flatMap(({ rules }) => rules),
)

const cut = (more: object): FelledCut =>
  felledCutSchema.parse({ diameter: 24, faceType: 'conventional', ...more })

/** What each rule says of one figure: its id, its verdict, and by how much. */
function said(figure: CutFigure, of: FelledCut, rules: readonly CutRule[] = RULES) {
  const found = findingsOf(of, rules).findings.find((finding) => finding.figure === figure)
  return (found?.allowed ?? []).map((allowed) =>
    [allowed.rule.id, allowed.verdict, ...('by' in allowed ? [Number(allowed.by.toFixed(4))] : [])].join(' '),
  )
}

// OSHA Logging eTool (2008): figures by the diameter; the example of 12 inches is its own, that of 24 computed from it.
describe('figures by the diameter', () => {
  it.each([
    [12, 9.6, 1.2, 3, 4],
    [24, 19.2, 2.4, 6, 8],
  ])(
    '[CG1] of %d inches: hinge %d long, %d thick, face from %d to %d deep',
    (diameter, length, thickness, least, most) => {
      const found = findingsOf(
        cut({ diameter, faceDepth: least, hinge: { left: 1, right: 1 }, hingeLength: diameter }),
        RULES,
      ).findings
      const allowed = (figure: CutFigure) => found.find((finding) => finding.figure === figure)?.allowed[0]
      expect(allowed('hinge-length')?.least).toBeCloseTo(length, 9)
      expect(allowed('hinge-thickness')?.most).toBeCloseTo(thickness, 9)
      expect(allowed('face-depth')).toMatchObject({ least, most, verdict: 'within' })
      expect(said('face-depth', cut({ diameter, faceDepth: most }))).toEqual(['cut.face-depth within'])
      // Cut so deep, and hinged so thick, a back cut of 7.80 inches is left of 12, and of 15.60 of 24.
      expect(diameter - least - thickness).toBeCloseTo(diameter === 12 ? 7.8 : 15.6, 9)
    },
  )

  it('[CG1] the ends of a band are in, and a sixteenth beyond is out', () => {
    expect(said('face-depth', cut({ faceDepth: 5.9375 }))).toEqual(['cut.face-depth under 0.0625'])
    expect(said('face-depth', cut({ faceDepth: 8.0625 }))).toEqual(['cut.face-depth over 0.0625'])
    // A third of 22 inches is no whole sixteenth: 7 5/16 is under it, 7 3/8 over.
    expect(said('face-depth', cut({ diameter: 22, faceDepth: 7.3125 }))).toEqual(['cut.face-depth within'])
    expect(said('face-depth', cut({ diameter: 22, faceDepth: 7.375 }))).toEqual([
      'cut.face-depth over 0.0417',
    ])
  })

  it('[CG2] what nobody measured has nothing beside it', () => {
    for (const { measured, allowed } of findingsOf(cut({}), RULES).findings) {
      expect(measured).toBeUndefined()
      expect(allowed).toEqual([])
    }
    expect(findingsOf(cut({ stumpHeight: 9 }), []).findings.at(-1)).toEqual({
      ...{ figure: 'stump-height', unit: 'inches', measured: 9, allowed: [] },
    })
  })
})

describe('the angle of a face', () => {
  // OSHA Logging eTool (2008), kinds of notches; OSHA CPL 02-01-022 (1996).
  it.each([
    ['open-face', 69.5, ['cut.face-angle.open under 0.5']],
    ['open-face', 70, ['cut.face-angle.open within']],
    ['open-face', 90, ['cut.face-angle.open within']],
    ['conventional', 45, ['cut.face-angle.closed within']],
    ['humboldt', 40, ['cut.face-angle.closed within']],
    ['humboldt', 51, ['cut.face-angle.closed over 1']],
  ] as const)('[CG1] %s, %d°', (faceType, faceAngle, expected) => {
    expect(said('face-angle', cut({ faceType, faceAngle }))).toEqual(expected)
  })
})

describe('the back cut', () => {
  const CLOSED = 'cut.back-cut.closed'
  const ABOVE = 'cut.back-cut.above'

  // The rows worked out from OSHA Logging eTool (2008) and 29 CFR 1910.266(h)(2)(vii).
  it.each([
    ['conventional', -1, {}, [`${CLOSED} under 2`, `${ABOVE} under 1`]],
    ['conventional', 0, {}, [`${CLOSED} under 1`, `${ABOVE} under 0`]],
    ['conventional', 0.5, {}, [`${CLOSED} under 0.5`, `${ABOVE} within`]],
    ['conventional', 1, {}, [`${CLOSED} within`, `${ABOVE} within`]],
    ['humboldt', 0.5, {}, [`${CLOSED} under 0.5`, `${ABOVE} within`]],
    ['open-face', 0, {}, ['cut.back-cut.open within']],
    ['open-face', 0.5, {}, ['cut.back-cut.open over 0.5']],
    ['conventional', -1, { pulled: true }, [`${CLOSED} under 2`]],
    // Michigan R 408.15336: about two inches; both stand side by side.
    [
      'conventional',
      1.5,
      { state: 'MI' },
      [`${CLOSED} within`, `${ABOVE} within`, 'cut.back-cut.mi under 0.5'],
    ],
    ['conventional', 1.5, { state: 'OR' }, [`${CLOSED} within`, `${ABOVE} within`]],
  ] as const)('[CG3] %s, %d inches above, %j', (faceType, backCut, more, expected) => {
    expect(said('back-cut', cut({ faceType, backCut, ...more }))).toEqual(expected)
  })
})

describe('the hinge', () => {
  // Geometry: the chord of a circle of diameter 1 at a depth of the face.
  it.each([
    [1 / 5, 0.8],
    [1 / 4, 0.866],
    [1 / 3, 0.9428],
  ])('[CG4] at a face %d of the diameter deep is at most %d of it long', (depth, chord) => {
    expect(mostByChord(depth, 1)).toBeCloseTo(chord, 4)
  })

  it('[CG4] is told of its thicker end, and longer than the chord is over', () => {
    const stump = cut({
      diameter: 22,
      faceDepth: 6.25,
      hinge: { left: 2.25, right: 1.875 },
      hingeLength: 18.75,
    })
    expect(said('hinge-thickness', stump)).toEqual(['cut.hinge-thickness over 0.05'])
    expect(said('hinge-length', stump)).toEqual(['cut.hinge-length within'])
    // 2·√(6.25 × 15.75) = 19.84.
    expect(said('hinge-length', cut({ ...stump, hingeLength: 20 }))).toEqual(['cut.hinge-length over 0.1569'])
  })

  it('[CG3] a rule up to a diameter says nothing of wider trees', () => {
    const upTo = RULES.map((rule) =>
      rule.id === 'cut.hinge-thickness' ? { ...rule, upTo: 20 } : rule,
    ) as CutRule[]
    expect(said('hinge-thickness', cut({ hinge: { left: 3, right: 3 } }), upTo)).toEqual([])
    expect(said('hinge-thickness', cut({ diameter: 20, hinge: { left: 2, right: 2 } }), upTo)).toEqual([
      'cut.hinge-thickness within',
    ])
  })
})

describe('how a tree lay', () => {
  it('[CG5] is degrees off and feet missed, and the ways out go by what was meant', () => {
    // 68 · sin 4° = 4.743; ways out 135° to either side, from the advice of 45° to the rear (OSHA logging advisor).
    expect(layFinding({ meant: 90, found: 94 }, 68)).toMatchObject({
      ...{ off: 4, isWrongSide: false, waysOut: [225, 315] },
      missedBy: expect.closeTo(4.743, 3) as number,
    })
    expect(layFinding({ meant: 350, found: 10 }, undefined)).toMatchObject({ off: 20, waysOut: [125, 215] })
    expect(layFinding({ meant: 10, found: 350 }, 100)).toMatchObject({ off: -20 })
    expect(layFinding({ meant: 0, found: 90 }, 80)).toMatchObject({
      off: 90,
      missedBy: 80,
      isWrongSide: false,
    })
    expect(layFinding({ meant: 0, found: 135 }, 80)).toMatchObject({
      off: 135,
      missedBy: 80,
      isWrongSide: true,
    })
    expect(layFinding({ meant: 0, found: 180 }, 80)).toMatchObject({
      off: 180,
      missedBy: 80,
      isWrongSide: true,
    })
  })

  it('[CG5] turns with the compass: the same however the north lies', () => {
    const azimuth = fc.integer({ min: 0, max: 359 })
    fc.assert(
      fc.property(azimuth, azimuth, azimuth, (meant, found, turn) => {
        const one = layFinding({ meant, found }, 60)
        const other = layFinding({ meant: (meant + turn) % 360, found: (found + turn) % 360 }, 60)
        expect([other.off, other.missedBy]).toEqual([one.off, one.missedBy])
        expect(one.off).toBeGreaterThan(-180)
        expect(one.off).toBeLessThanOrEqual(180)
      }),
    )
  })
})

describe('a measurement that cannot be', () => {
  it('[CG6] is told where it stands', () => {
    expect(problemsOfCut(cut({ hinge: { left: 25, right: 1 } }))).toEqual([
      { kind: 'more-than-the-tree', field: 'hinge.left', inches: 25, diameter: 24 },
    ])
    expect(problemsOfCut(cut({ faceDepth: 20, hinge: { left: 5, right: 4 } }))).toEqual([
      { kind: 'face-and-hinge', inches: 25, diameter: 24 },
    ])
    expect(problemsOfCut(cut({ faceDepth: 20, hinge: { left: 4, right: 4 } }))).toEqual([])
    for (const wrong of [
      { hinge: { left: -1, right: 1 } },
      { lay: { meant: 400, found: 0 } },
      { faceAngle: 44.2 },
    ])
      expect(felledCutSchema.safeParse({ diameter: 24, faceType: 'conventional', ...wrong }).success).toBe(
        false,
      )
  })

  it('[CG6] is asked back where it is seldom so large', () => {
    expect(doubtsOfCut(cut({ diameter: 61, stumpHeight: 30 }))).toEqual([
      { kind: 'centimetres', field: 'diameter', inches: 61, asInches: expect.closeTo(24.016, 3) as number },
    ])
    expect(doubtsOfCut(cut({ stumpHeight: 30 }))).toEqual([])
  })
})

it('[CG1] a stump twice as large in everything that goes by the diameter is told the same of it', () => {
  const sixteenths = (most: number) => fc.integer({ min: 0, max: most * 16 }).map((value) => value / 16)
  const stump = fc.record({
    diameter: fc.integer({ min: 16 * 8, max: 16 * 40 }).map((value) => value / 16),
    faceType: fc.constantFrom('open-face', 'conventional', 'humboldt'),
    faceDepth: sixteenths(20),
    hinge: fc.record({ left: sixteenths(6), right: sixteenths(6) }),
    hingeLength: sixteenths(40),
  })
  fc.assert(
    fc.property(stump, (drawn) => {
      const { diameter, faceDepth, hinge, hingeLength } = drawn
      const twice = {
        ...drawn,
        ...{ diameter: diameter * 2, faceDepth: faceDepth * 2, hingeLength: hingeLength * 2 },
        hinge: { left: hinge.left * 2, right: hinge.right * 2 },
      }
      const verdicts = (of: object) =>
        findingsOf(cut(of), RULES).findings.map(({ allowed }) => allowed.map(({ verdict }) => verdict))
      expect(verdicts(twice)).toEqual(verdicts(drawn))
    }),
  )
})
