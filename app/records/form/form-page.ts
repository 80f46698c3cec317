import type { RecordChoices } from '../../../lib/usecases/records/record-choices.ts'
import type { NamesOffered } from './record-fields.client.tsx'
import { isLeaf, type ChoiceList, type FormParts, type Leaf, type Option } from './parts.ts'

/** The names that the fields of a form may be written with, and no others: they go with the page. */
export function namesOffered(parts: FormParts, choices: RecordChoices): NamesOffered {
  const lists = new Set(leavesOf(parts).flatMap((leaf) => (leaf.kind === 'named' ? [leaf.of] : [])))
  return Object.fromEntries(
    [...lists].map((list: ChoiceList) => [
      list,
      choices[list].map(({ id, name }): Option => ({ value: id, label: name })),
    ]),
  )
}

function leavesOf(parts: FormParts): readonly Leaf[] {
  return parts.flatMap((part) => {
    if (isLeaf(part)) return [part]
    return part.kind === 'one-of' ? part.ways.flatMap((way) => way.leaves) : part.leaves
  })
}
