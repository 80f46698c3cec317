import type { Restriction } from '../../../lib/core/cards/cards.schema.ts'
import { readDate } from '../../../lib/core/calendar/dates.ts'
import { isInches, writeInches } from '../../../lib/core/kernel/measures.ts'
import type { RecordFact } from '../../../lib/usecases/records/record-kinds.ts'
import type { RecordChoices } from '../../../lib/usecases/records/record-choices.ts'
import { dayText } from '../../../lib/wording/days.ts'
import { isLeaf, type ChoiceList, type FormParts, type Leaf, type Rows } from './parts.ts'
import { restrictionRow } from './restriction-rows.ts'

type Held = Readonly<Record<string, unknown>>

/** The texts with which a form begins that is to correct a record, by the names of its fields. */
export function valuesOf(
  parts: FormParts,
  fact: RecordFact | Held,
  prefix: string,
  choices: RecordChoices,
): Readonly<Record<string, string>> {
  const values: Record<string, string> = {}
  const put = (leaf: Leaf, held: Held, base: string) => {
    for (const [name, text] of leafTexts(leaf, held, `${base}.${leaf.path}`, choices)) values[name] = text
  }
  for (const part of parts) {
    if (isLeaf(part)) {
      put(part, { ...fact }, prefix)
      continue
    }
    const base = `${prefix}.${part.path}`
    const held = inside({ ...fact }, part.path)
    if (part.kind === 'group') for (const leaf of part.leaves) put(leaf, asHeld(held), base)
    else if (part.kind === 'rows') {
      rowsOf(part, held, choices).forEach((row, at) => {
        for (const leaf of part.leaves) put(leaf, row, `${base}.${at}`)
        if (typeof row['id'] === 'string') values[`${base}.${at}.id`] = row['id']
      })
    } else {
      const chosen = part.ways.find(({ value }) => value === asHeld(held)['kind'])
      if (chosen === undefined) continue
      values[`${base}.kind`] = chosen.value
      for (const leaf of chosen.leaves) put(leaf, asHeld(held), `${base}.${chosen.value}`)
    }
  }
  return values
}

/** What a record holds, as a list of labels and texts in the order of its form; what it does not hold is left out. */
export function shownFields(
  parts: FormParts,
  fact: RecordFact | Held,
  choices: RecordChoices,
): readonly { label: string; text: string }[] {
  const shown = (leaf: Leaf, held: Held, of?: string) => {
    const text = leafShown(leaf, held, choices)
    return text === '' ? [] : [{ label: of === undefined ? leaf.label : `${of}: ${lower(leaf.label)}`, text }]
  }
  return parts.flatMap((part) => {
    if (isLeaf(part)) return shown(part, { ...fact })
    const held = inside({ ...fact }, part.path)
    if (part.kind === 'group') return part.leaves.flatMap((leaf) => shown(leaf, asHeld(held), part.label))
    if (part.kind === 'rows') {
      const rows = rowsOf(part, held, choices)
      return rows.map((row, at) => ({
        label: rows.length === 1 ? part.label : `${part.label} ${at + 1}`,
        text: part.leaves
          .map((leaf) => leafShown(leaf, row, choices))
          .filter((text) => text !== '')
          .join(', '),
      }))
    }
    const chosen = part.ways.find(({ value }) => value === asHeld(held)['kind'])
    if (chosen === undefined) return []
    return [
      { label: part.label, text: chosen.label },
      ...chosen.leaves.flatMap((leaf) => shown(leaf, asHeld(held))),
    ]
  })
}

/** The fields of a record that its form does not ask: a correction leaves them as they are. */
export function keptFields(parts: FormParts, fact: RecordFact): Held {
  const asked = new Set(
    parts.flatMap((part) => (part.kind === 'one' && part.parts !== undefined ? part.parts : [part.path])),
  )
  const ofVersions = ['id', 'recordedIn', 'supersededIn', 'supersedes']
  return Object.fromEntries(
    Object.entries(fact).filter(([name]) => !asked.has(name) && !ofVersions.includes(name)),
  )
}

function leafTexts(
  leaf: Leaf,
  held: Held,
  name: string,
  choices: RecordChoices,
): readonly (readonly [string, string])[] {
  if (leaf.kind !== 'some') return [[name, leafText(leaf, held, choices)]]
  const value = held[leaf.path]
  const chosen = Array.isArray(value) ? value.map(String) : value === undefined ? [] : [textOf(value)]
  return chosen.map((each) => [`${name}.${each}`, 'on'])
}

/** What a field says in its form. */
function leafText(leaf: Leaf, held: Held, choices: RecordChoices): string {
  if (leaf.kind === 'one' && leaf.parts !== undefined)
    return leaf.parts
      .map((part) => textOf(held[part]))
      .join(' ')
      .trim()
  const value = held[leaf.path]
  if (value === undefined) return ''
  switch (leaf.kind) {
    case 'day': {
      const read = readDate(textOf(value))
      return 'date' in read ? dayText(read.date) : textOf(value)
    }
    case 'inches':
      return typeof value === 'number' && isInches(value) ? writeInches(value) : textOf(value)
    case 'yes-no':
      return value === true ? 'yes' : 'no'
    case 'named':
      return nameIn(leaf.of, textOf(value), choices)
    case 'lines':
      return (Array.isArray(value) ? value : [])
        .map((each) => (leaf.of === undefined ? textOf(each) : nameIn(leaf.of, textOf(each), choices)))
        .join('\n')
    case 'text':
    case 'long-text':
    case 'one':
    case 'some':
    case 'number':
    case 'degrees':
      return textOf(value)
  }
}

/** What a field says to who only reads it. */
function leafShown(leaf: Leaf, held: Held, choices: RecordChoices): string {
  if (leaf.kind === 'some') {
    const value = held[leaf.path]
    const options = [...leaf.of, ...(leaf.instead === undefined ? [] : [leaf.instead])]
    const chosen = Array.isArray(value) ? value.map(String) : value === undefined ? [] : [textOf(value)]
    return chosen.map((each) => options.find((one) => one.value === each)?.label ?? each).join(', ')
  }
  const text = leafText(leaf, held, choices)
  if (leaf.kind === 'lines') return text.split('\n').join(', ')
  if (leaf.kind === 'yes-no') return text
  if (leaf.kind !== 'one' || text === '') return text
  if (typeof leaf.of === 'string') return nameIn(leaf.of, text, choices)
  return leaf.of.find(({ value }) => value === text)?.label ?? text
}

function rowsOf(rows: Rows, held: unknown, choices: RecordChoices): readonly Held[] {
  if (!Array.isArray(held)) return []
  if (rows.are !== 'restrictions') return held.map(asHeld)
  // INVARIANT: rows of this kind hold what the schema of restrictions read.
  return (held as readonly Restriction[]).map((restriction) =>
    restrictionRow(restriction, (id) => nameIn('places', id, choices)),
  )
}

function nameIn(of: ChoiceList, id: string, choices: RecordChoices): string {
  return choices[of].find((one) => one.id === id)?.name ?? id
}

function inside(held: Held, path: string): unknown {
  return held[path]
}

function asHeld(value: unknown): Held {
  return typeof value === 'object' && value !== null ? { ...value } : {}
}

function textOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : ''
}

function lower(label: string): string {
  return label.charAt(0).toLowerCase() + label.slice(1)
}
