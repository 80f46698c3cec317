import type { CutFindings } from '../core/evaluations/cut-findings.ts'
import type { FelledCut } from '../core/evaluations/cut-record.schema.ts'
import { inchesWords, laySentence, measuredSentence } from './cut-findings.ts'
import { faceTypeWords } from './cut-words.ts'

/** The words on the drawing of a stump, and the drawing in sentences. */
export function stumpWords(name: string, cut: FelledCut, { findings, lay }: CutFindings) {
  const { faceDepth, faceAngle, hinge, hingeLength, backCut, stumpHeight } = cut
  return {
    title: `${name}: the stump from above and from its right side, to one scale`,
    desc: [
      `Stump ${inchesWords(cut.diameter)} across, face: ${faceTypeWords[cut.faceType]}; the tree was meant to fall to the right.`,
      ...findings.filter(({ measured }) => measured !== undefined).map(measuredSentence),
      ...(lay === undefined ? [] : [laySentence(lay)]),
      ...(cut.faceType === 'open-face'
        ? ['Of an open face the opening alone is measured; it is drawn half above its corner, half below.']
        : []),
      ...(hinge !== undefined && hingeLength === undefined
        ? ['How long the hinge is was not measured; it is drawn as long as the face.']
        : []),
      'What was not measured is not drawn.',
    ].join(' '),
    fromAbove: 'From above',
    fromSide: 'From the right side',
    legend: [
      'Shaded and dashed: what the rules allow.',
      'Dotted: what went with the tree, what was meant, and the ways out.',
    ],
    north: 'N',
    inches: (count: number) => `${count} in`,
    ...(faceDepth === undefined ? {} : { faceDepth: `face ${inchesWords(faceDepth)}` }),
    ...(hinge === undefined
      ? {}
      : { hingeLeft: `left ${inchesWords(hinge.left)}`, hingeRight: `right ${inchesWords(hinge.right)}` }),
    ...(hingeLength === undefined ? {} : { hingeLength: `hinge ${inchesWords(hingeLength)} long` }),
    ...(faceAngle === undefined ? {} : { faceAngle: `${faceAngle}°` }),
    ...(backCut === undefined
      ? {}
      : { backCut: backCut === 0 ? 'back cut level' : `back cut ${inchesWords(backCut)}` }),
    ...(stumpHeight === undefined ? {} : { stumpHeight: `stump ${inchesWords(stumpHeight)}` }),
    ...(lay === undefined ? {} : { layFound: `lay ${lay.found}°`, layMeant: `meant ${lay.meant}°` }),
  }
}
