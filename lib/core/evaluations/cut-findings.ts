import type { CutRule } from '../rulebooks/kinds/evaluations.schema.ts'
import type { FelledCut } from './cut-record.schema.ts'
import { layFinding, type LayFinding } from './lay.ts'
import { mostByChord, within, type Band, type Bounds } from './tolerances.ts'

/** A figure of a stump about which rules speak. */
export const CUT_FIGURES = [
  'face-depth',
  'face-angle',
  'hinge-thickness',
  'hinge-length',
  'back-cut',
  'dutchman',
  'stump-height',
] as const
export type CutFigure = (typeof CUT_FIGURES)[number]

/** What one rule allows for a figure, in its unit, and where the measured one lies; `by` is how far outside. */
export type Allowed = { rule: CutRule } & Band

/**
 * What was measured beside what the rules allow, each with its rule: never a pass or a fail. A figure that nobody measured
 * has none; one about which no rule speaks has none that is allowed.
 */
export type CutFinding = {
  figure: CutFigure
  unit: 'inches' | 'degrees'
  /** The thicker end of a hinge. */
  measured?: number
  /** Of the diameter, from 0 through 1, where the figure goes by it. */
  share?: number
  allowed: readonly Allowed[]
}

/** The findings of a stump, and how its tree lay. */
export type CutFindings = { findings: readonly CutFinding[]; lay?: LayFinding }

/** What the measurements of a stump say, figure by figure, by the rules of an edition that govern there. */
export function findingsOf(cut: FelledCut, rules: readonly CutRule[]): CutFindings {
  const governing = rules.filter((rule) => rule.state === undefined || rule.state === cut.state)
  const findings = CUT_FIGURES.map((figure): CutFinding => {
    const measured = measuredOf(cut, figure)
    const unit = figure === 'face-angle' ? 'degrees' : 'inches'
    const bounds = governing.flatMap((rule) => {
      const of = boundsOf(rule, figure, cut)
      return of === undefined ? [] : [{ rule, of }]
    })
    if (measured === undefined) return { figure, unit, allowed: [] }
    const allowed = bounds.map(({ rule, of }): Allowed => ({ rule, ...within(measured, of) }))
    const isShare = figure === 'face-depth' || figure === 'hinge-thickness' || figure === 'hinge-length'
    return { figure, unit, measured, ...(isShare ? { share: measured / cut.diameter } : {}), allowed }
  })
  return cut.lay === undefined ? { findings } : { findings, lay: layFinding(cut.lay, cut.height) }
}

function measuredOf(cut: FelledCut, figure: CutFigure): number | undefined {
  switch (figure) {
    case 'face-depth':
      return cut.faceDepth
    case 'face-angle':
      return cut.faceAngle
    case 'hinge-thickness':
      return cut.hinge === undefined ? undefined : Math.max(cut.hinge.left, cut.hinge.right)
    case 'hinge-length':
      return cut.hingeLength
    case 'back-cut':
      return cut.backCut
    case 'dutchman':
      return cut.dutchman
    case 'stump-height':
      return cut.stumpHeight
  }
}

/** What a rule says of a figure of this stump; nothing where it speaks of another. */
function boundsOf(rule: CutRule, figure: CutFigure, cut: FelledCut): Bounds | undefined {
  switch (rule.kind) {
    case 'cut.share': {
      if (rule.figure !== figure || (rule.upTo !== undefined && cut.diameter > rule.upTo)) return undefined
      const of = (share: { over: number; under: number }) => (share.over * cut.diameter) / share.under
      const most = rule.most === undefined ? chordOf(figure, cut) : of(rule.most)
      return {
        ...(rule.least === undefined ? {} : { least: of(rule.least) }),
        ...(most === undefined ? {} : { most }),
      }
    }
    case 'cut.angle':
      return figure === 'face-angle' && rule.faceTypes.includes(cut.faceType) ? rule : undefined
    case 'cut.back-cut': {
      if (figure !== 'back-cut' || !rule.faceTypes.includes(cut.faceType)) return undefined
      if (rule.exceptPulled === true && cut.pulled === true) return undefined
      return { ...rule, ...(rule.above === true ? { moreThan: 0 } : {}) }
    }
    case 'cut.length':
      return rule.figure === figure ? { most: rule.most } : undefined
  }
}

/** A hinge can be no longer than the chord of the stump where the face ends. */
function chordOf(figure: CutFigure, { faceDepth, diameter }: FelledCut): number | undefined {
  return figure === 'hinge-length' && faceDepth !== undefined ? mostByChord(faceDepth, diameter) : undefined
}
