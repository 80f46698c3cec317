import type { CutFigure } from '../core/evaluations/cut-findings.ts'
import type { Bind, FaceType, LogSide, WedgeKind } from '../core/rulebooks/words.ts'

/** What is measured of a stump. */
export const cutFigureWords: Readonly<Record<CutFigure, string>> = {
  'face-depth': 'depth of the face',
  'face-angle': 'angle of the face',
  'hinge-thickness': 'thickness of the hinge',
  'hinge-length': 'length of the hinge',
  'back-cut': 'back cut over the face',
  dutchman: 'dutchman',
  'stump-height': 'height of the stump',
}

/** Faces as fellers call them. */
export const faceTypeWords: Readonly<Record<FaceType, string>> = {
  'open-face': 'open face',
  conventional: 'conventional',
  humboldt: 'Humboldt',
}

/** Binds as sawyers call them. */
export const bindWords: Readonly<Record<Bind, string>> = {
  none: 'no bind',
  top: 'top bind',
  bottom: 'bottom bind',
  left: 'side bind, pressed on the left',
  right: 'side bind, pressed on the right',
  end: 'end bind',
  torsion: 'torsion',
  several: 'several binds at once',
}

/** The side from which a log is cut. */
export const logSideWords: Readonly<Record<LogSide, string>> = {
  top: 'the top',
  bottom: 'below',
  left: 'the left',
  right: 'the right',
}

/** Kinds of wedges, of which there are several. */
export const wedgeWords: Readonly<Record<WedgeKind, string>> = {
  ordinary: 'wedges',
  hanging: 'hanging wedges',
}
