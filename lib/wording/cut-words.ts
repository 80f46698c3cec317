import type { CutFigure } from '../core/evaluations/cut-findings.ts'
import type { FaceType } from '../core/rulebooks/words.ts'

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
