import { describe, expect, it } from 'vitest'
import { findingsOf, type CutFigure } from '../../lib/core/evaluations/cut-findings.ts'
import { felledCutSchema } from '../../lib/core/evaluations/cut-record.schema.ts'
import { layFinding } from '../../lib/core/evaluations/lay.ts'
import { findingsOfLog } from '../../lib/core/evaluations/log-findings.ts'
import { buckedCutSchema } from '../../lib/core/evaluations/log-record.schema.ts'
import { cutRulesOf, logRulesOf } from '../../lib/core/rulebooks/cut-rules.ts'
import {
  allowedSentence,
  cutDoubtSentence,
  cutProblemSentence,
  laySentence,
  measuredSentence,
} from '../../lib/wording/cut-findings.ts'
import { logFindingSentence, logProblemSentence, statedSentence } from '../../lib/wording/log-findings.ts'
import { stumpWords } from '../../lib/wording/stump-drawing.ts'
import { shippedBookFiles } from '../builders/shipped-book-files.ts'

const ALL = shippedBookFiles().flatMap(({ editions }) => editions.flatMap(({ rules }) => rules))
const RULES = cutRulesOf(ALL)
const LOG_RULES = logRulesOf(ALL)
const cut = (more: object) => felledCutSchema.parse({ diameter: 24, faceType: 'conventional', ...more })

/** What is said of one figure, its rules after it. */
function said(figure: CutFigure, more: object): string[] {
  const finding = findingsOf(cut(more), RULES).findings.find((each) => each.figure === figure)
  if (finding === undefined) throw new Error('no such figure')
  return [
    measuredSentence(finding),
    ...finding.allowed.map((allowed) => allowedSentence(allowed, finding.unit)),
  ]
}

describe('what a stump measures, in words', () => {
  it('[WO44] stands with its unit and its part of the diameter', () => {
    expect(said('hinge-thickness', { hinge: { left: 2.25, right: 2 } })[0]).toBe(
      'Thickness of the hinge: 2 1/4 in at its thicker end, 9.38 per cent of the diameter.',
    )
    expect(said('face-angle', { faceAngle: 44.5 })[0]).toBe('Angle of the face: 44.5°.')
    expect(said('back-cut', { backCut: -0.5 })[0]).toBe('Back cut over the face: 1/2 in below.')
    expect(said('dutchman', {})).toEqual(['Dutchman: not measured.'])
  })

  // Figures: OSHA Logging eTool (2008) and 29 CFR 1910.266(h)(2)(vii); in Michigan its guide, as the book says.
  it('[WO44] stands beside each rule, with how far it is outside, the state, and the source', () => {
    const [, depth] = said('face-depth', { faceDepth: 8.5 })
    expect(depth).toMatch(
      /^Over by 1\/2 in: 6 in to 8 in\. .* OSHA Logging eTool .*\(cut\.face-depth, published\)\.$/,
    )
    const level = said('back-cut', { backCut: 0 })
    expect(level).toContainEqual(expect.stringMatching(/^Under by 1 in: at least 1 in\./))
    expect(level).toContainEqual(expect.stringMatching(/^Under: above 0 in\. .*1910\.266\(h\)\(2\)\(vii\)/))
    const michigan = said('back-cut', { backCut: 1, state: 'MI' })
    expect(michigan.filter((line) => line.includes(' In MI: '))).toHaveLength(1)
    expect(michigan).toHaveLength(level.length + 1)
  })

  it('[WO44] says less than a hundredth where it is outside by so little', () => {
    // A tenth of 18 11/16 in is 1.86875 in, and 1 7/8 in is over it by 0.00625 in.
    const over = said('hinge-thickness', { diameter: 18.6875, hinge: { left: 1.875, right: 1 } })
    expect(over[1]).toMatch(/^Over by 0\.01 in: at most 1\.87 in\./)
    const finding = findingsOf(cut({ hinge: { left: 2.25, right: 2 } }), RULES).findings[2]
    const allowed = finding?.allowed[0]
    if (allowed === undefined) throw new Error('no rule')
    expect(allowedSentence({ ...allowed, verdict: 'over', by: 0.0042 }, 'inches')).toMatch(
      /^Over by less than 0\.01 in: /,
    )
  })

  it('[WO44] tells the lay as a fact, with the side and by how much the top missed', () => {
    expect(laySentence(layFinding({ meant: 90, found: 90 }, 80))).toMatch(
      /^Lay: meant 90°, found 90°, as it was meant to\. The ways out lay at 225° and 315°\./,
    )
    expect(laySentence(layFinding({ meant: 350, found: 10 }, undefined))).toContain('20° to the right.')
    expect(laySentence(layFinding({ meant: 0, found: 200 }, 80))).toContain(
      '160° to the left, on the wrong side: its top missed by the whole 80 ft.',
    )
  })

  it('[WO44] names the measurement that cannot be, and asks back about one that may be centimetres', () => {
    expect(
      cutProblemSentence({ kind: 'more-than-the-tree', field: 'hinge.left', inches: 30, diameter: 24 }),
    ).toBe('stump.hinge.left: 30 in is more than the tree is wide, 24 in.')
    expect(
      cutDoubtSentence({ kind: 'centimetres', field: 'stumpHeight', inches: 38, asInches: 14.9606 }),
    ).toBe('Height of the stump: is 38 in right? Read in centimetres it would be 14.96 in.')
  })

  it('[WO44] says in the drawing’s own sentences what is drawn by guess', () => {
    const open = cut({ faceType: 'open-face', faceDepth: 6, faceAngle: 80, hinge: { left: 2, right: 2 } })
    const { desc, hingeLength, hingeLeft } = {
      hingeLength: undefined,
      ...stumpWords('Cut 1', open, findingsOf(open, RULES)),
    }
    expect(desc).toContain('half above its corner, half below')
    expect(desc).toContain('How long the hinge is was not measured')
    expect(hingeLength).toBeUndefined()
    expect(hingeLeft).toBe('left 2 in')
  })
})

describe('what was seen of a log, in words', () => {
  const sentences = (more: object) =>
    findingsOfLog(buckedCutSchema.parse({ diameter: 20, ...more }), LOG_RULES).flatMap((finding) => [
      logFindingSentence(finding),
      ...('stated' in finding ? finding.stated.map(statedSentence) : []),
    ])

  it('[WO45] says what was not recorded, figure by figure', () => {
    expect(sentences({})).toEqual([
      'Bind: called not recorded, found not recorded.',
      'Order of the cuts: not recorded.',
      'Offset: not measured.',
      'Wedges: not recorded.',
      'Pinch: not recorded.',
    ])
  })

  // Saws That Sing, 0423-2822-MTDC (2004): a bottom bind without room below is cut from the top, with two hanging wedges.
  it('[WO45] says each rule with whether it was done so, its source and its support', () => {
    const said = sentences({
      bindCalled: 'top',
      bindFound: 'bottom',
      roomBelow: false,
      cuts: [{ from: 'top', depth: 20 }],
      wedges: { ordinary: 1, hanging: 0 },
      pinched: true,
    })
    expect(said[0]).toBe(
      'Bind: called top bind, found bottom bind. The kerf showed another bind than was called.',
    )
    expect(said[2]).toMatch(
      /^As the rule states: .* Saws That Sing, .*\(log\.order\.bottom\.no-room, published\)\.$/,
    )
    expect(said.find((each) => each.startsWith('Otherwise'))).toMatch(
      /^Otherwise than the rule states: .*\(log\.wedges\.bottom\.no-room, published\)\.$/,
    )
    expect(said.at(-1)).toBe('Pinch: the kerf closed on the saw. Recorded, and not judged.')
  })

  it('[WO45] names the cut that is deeper than its log', () => {
    expect(logProblemSentence({ kind: 'deeper-than-the-log', at: 1, inches: 23, diameter: 22 })).toBe(
      'log.cuts[1].depth: 23 in is more than the log is wide, 22 in.',
    )
  })
})
