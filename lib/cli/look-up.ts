import { foldedName } from '../core/kernel/folded.ts'
import { nearestName } from '../core/kernel/nearest-name.ts'
import type { Result } from '../core/kernel/result.ts'
import { joinedByOr } from '../wording/lists.ts'
import { refused, type Refusal } from './outcome.ts'
import { printableLine } from './printable.ts'

/** How many names are compared for a suggestion. */
const MOST_COMPARED = 20_000
/** How many records are suggested. */
const MOST_SUGGESTED = 5

type Fact = { id: string; name: string }

/**
 * The id that somebody means by an id or an exact name. A name that several share, or that reads like
 * another's, is refused with their ids; what
 * nothing is called is refused with those that begin with it or hold it, or the nearest.
 */
export function lookUp(noun: string, typed: string, facts: readonly Fact[]): Result<string, Refusal> {
  if (facts.some((fact) => fact.id === typed)) return { ok: true, value: typed }
  const isCalled = facts.some((fact) => fact.name === typed)
  // Whoever reads a name cannot tell it from one that reads alike.
  const alike = isCalled ? facts.filter((fact) => foldedName(fact.name) === foldedName(typed)) : []
  const named = [...new Set(alike.map((fact) => fact.id))]
  const only = named[0]
  if (only !== undefined && named.length === 1) return { ok: true, value: only }
  if (named.length > 1) {
    return refused(
      `Several are called “${printableLine(typed)}”. Say which ${noun} by the id: ${joinedByOr(named)}.`,
    )
  }
  const where = noun === 'item' ? ' The command matrix lists items.' : ''
  return refused(
    `No ${noun} on record has the id or name “${printableLine(typed)}”.${suggestion(typed, facts.slice(0, MOST_COMPARED))}${where}`,
  )
}

/** Those whose id or name begins with what was typed, then those that contain it; where none does, the nearest. */
function suggestion(typed: string, facts: readonly Fact[]): string {
  const wanted = folded(typed)
  const texts = facts.flatMap((fact) =>
    [fact.id, fact.name].map((text) => ({ fact, text, in: folded(text) })),
  )
  const holding = [
    ...texts.filter((text) => text.in.startsWith(wanted)),
    ...texts.filter((text) => text.in.includes(wanted)),
  ]
  const first = new Map<string, (typeof texts)[number]>()
  for (const held of holding) if (!first.has(held.fact.id)) first.set(held.fact.id, held)
  const found = wanted === '' ? [] : [...first.values()]
  const [only] = found
  if (only !== undefined && found.length === 1) return ` Is “${printableLine(only.text)}” meant?`
  if (only !== undefined) {
    const shown = found.slice(0, MOST_SUGGESTED).map(({ fact }) => `${fact.id} (${printableLine(fact.name)})`)
    return ` Is one of these meant: ${joinedByOr(shown)}?`
  }
  const nearest = nearestName(typed, [...facts.map((fact) => fact.id), ...facts.map((fact) => fact.name)])
  return nearest === undefined ? '' : ` Is “${printableLine(nearest)}” meant?`
}

/** Letters that keep their stroke when accents are taken off. */
const STROKED: Readonly<Record<string, string>> = {
  ł: 'l',
  ø: 'o',
  đ: 'd',
  ħ: 'h',
  ı: 'i',
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
}

/** A text without capitals and accents, for comparing. */
function folded(text: string): string {
  return text
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[łøđħıßæœ]/g, (letter) => STROKED[letter] ?? letter)
}
