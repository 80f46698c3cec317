import type { FelledCut } from './cut-record.schema.ts'

/** A measurement of a stump that can stand by itself. */
export type CutField =
  | 'diameter'
  | 'faceDepth'
  | 'hinge.left'
  | 'hinge.right'
  | 'hingeLength'
  | 'backCut'
  | 'dutchman'
  | 'stumpHeight'

/** A measurement that cannot be, beside another. */
export type CutProblem =
  | { kind: 'more-than-the-tree'; field: CutField; inches: number; diameter: number }
  | { kind: 'face-and-hinge'; inches: number; diameter: number }

/** A measurement that is seldom so large, and would be usual if it had been read in centimetres. */
export type CutDoubt = { kind: 'centimetres'; field: CutField; inches: number; asInches: number }

/** The greatest that is asked back about, in inches. Common practice, no source: it refuses nothing. */
const SELDOM_ABOVE: Readonly<Record<CutField, number>> = {
  diameter: 60,
  faceDepth: 24,
  'hinge.left': 6,
  'hinge.right': 6,
  hingeLength: 54,
  backCut: 6,
  dutchman: 4,
  stumpHeight: 30,
}

const CENTIMETRES = 2.54

/** What of a stump is longer than the tree is wide, or leaves no room for what lies beside it. */
export function problemsOfCut(cut: FelledCut): readonly CutProblem[] {
  const { diameter, faceDepth, hinge } = cut
  const across: readonly CutField[] = ['faceDepth', 'hinge.left', 'hinge.right', 'hingeLength', 'dutchman']
  const longer = measured(cut)
    .filter(([field, inches]) => across.includes(field) && inches > diameter)
    .map(([field, inches]): CutProblem => ({ kind: 'more-than-the-tree', field, inches, diameter }))
  if (longer.length > 0 || faceDepth === undefined || hinge === undefined) return longer
  const inches = faceDepth + Math.max(hinge.left, hinge.right)
  return inches > diameter ? [{ kind: 'face-and-hinge', inches, diameter }] : []
}

/** What is asked back: it may have been read in centimetres. */
export function doubtsOfCut(cut: FelledCut): readonly CutDoubt[] {
  return measured(cut)
    .filter(([field, inches]) => inches > SELDOM_ABOVE[field])
    .map(([field, inches]): CutDoubt => ({
      kind: 'centimetres',
      field,
      inches,
      asInches: inches / CENTIMETRES,
    }))
}

function measured({ diameter, hinge, ...cut }: FelledCut): readonly (readonly [CutField, number])[] {
  const { faceDepth, hingeLength, backCut, dutchman, stumpHeight } = cut
  const fields: readonly (readonly [CutField, number | undefined])[] = [
    ['diameter', diameter],
    ['faceDepth', faceDepth],
    ['hinge.left', hinge?.left],
    ['hinge.right', hinge?.right],
    ['hingeLength', hingeLength],
    ['backCut', backCut],
    ['dutchman', dutchman],
    ['stumpHeight', stumpHeight],
  ]
  return fields.flatMap(([field, inches]) => (inches === undefined ? [] : [[field, inches] as const]))
}
