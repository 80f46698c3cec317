import type { Restriction } from '../../../lib/core/cards/cards.schema.ts'
import { writeInches } from '../../../lib/core/kernel/measures.ts'
import { refusal, success, type Result } from '../../../lib/core/kernel/result.ts'
import { COMPLEXITIES } from '../../../lib/core/rulebooks/words.ts'
import type { RecordChoices } from '../../../lib/usecases/records/record-choices.ts'
import { readInches } from '../../../lib/wording/read-inches.ts'
import { complexityWords } from '../../../lib/wording/work-words.ts'
import { meant } from './read-leaf.ts'

type Held = Record<string, unknown>

/**
 * A restriction as it was typed in a row: what its text says goes by its kind. An empty row is no restriction. `id` is
 * that of the row, which a restriction keeps through corrections, so that what was decided about its words still finds it.
 */
export function readRestriction(
  { kind, says, workKinds }: Held,
  id: string,
  choices: RecordChoices,
): Result<Held, string> {
  if (typeof kind !== 'string')
    return says === undefined ? success({}) : refusal('Choose of which kind this restriction is.')
  const scope = {
    kind,
    id,
    ...(workKinds === undefined ? {} : { workKinds }),
  }
  const text = typeof says === 'string' ? says : ''
  const lines = text.split(/\r?\n/).flatMap((line) => (line.trim() === '' ? [] : [line.trim()]))
  switch (kind) {
    case 'greatest-diameter': {
      const inches = readInches(text)
      return inches.ok ? success({ ...scope, inches: inches.value }) : inches
    }
    case 'greatest-complexity': {
      const typed = text.trim().toLowerCase()
      const complexity = COMPLEXITIES.find((one) => one === typed || complexityWords[one] === typed)
      return complexity === undefined
        ? refusal(`Write one of these: ${COMPLEXITIES.map((one) => complexityWords[one]).join(', ')}.`)
        : success({ ...scope, complexity })
    }
    case 'places': {
      const read = lines.map((line) => meant(line, 'places', choices))
      const [wrong] = read.flatMap((one) => (one.ok ? [] : [one.problem]))
      return wrong === undefined
        ? success({ ...scope, places: read.flatMap((one) => (one.ok ? [one.value] : [])) })
        : refusal(wrong)
    }
    case 'species':
      return success({ ...scope, species: lines })
    case 'words':
      return text === '' ? refusal('Write the words as they stand on the card.') : success({ ...scope, text })
    default:
      return text === '' ? success(scope) : refusal('A restriction of this kind says nothing more.')
  }
}

/** A restriction as the row of a form shows it. */
export function restrictionRow(
  restriction: Restriction,
  placeName: (id: string) => string,
): { kind: string; says: string; workKinds: readonly string[]; id: string } {
  const { id, kind, workKinds = [] } = restriction
  return { kind, says: saysOf(restriction, placeName), workKinds, id }
}

function saysOf(restriction: Restriction, placeName: (id: string) => string): string {
  switch (restriction.kind) {
    case 'greatest-diameter':
      return writeInches(restriction.inches)
    case 'greatest-complexity':
      return complexityWords[restriction.complexity]
    case 'places':
      return restriction.places.map(placeName).join('\n')
    case 'species':
      return restriction.species.join('\n')
    case 'words':
      return restriction.text
    case 'double-bucking-only':
    case 'supervisor-only':
    case 'no-felling':
      return ''
  }
}
