import type { Sections } from '../authority/records.ts'
import { stepsTo, type FactIndex, type PartLocated } from './fact-index.ts'
import { writePath } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import type { SectionName } from './sections.ts'

/** What says which record a fact is of, and so is the same in all its versions. */
const ANCHORS = {
  editions: ['book'],
  confirmations: ['edition', 'rule'],
  memberships: ['person'],
  permissions: ['person'],
  certificates: ['person'],
  designations: ['person'],
  assignments: ['person'],
  cards: ['number', 'line', 'person'],
  endings: ['card'],
  resolutions: ['card', 'restriction'],
  extensions: ['book'],
  suspensions: ['subject'],
  lifts: ['suspension'],
  ratings: ['item'],
  raises: ['item'],
  placements: ['hitch', 'person'],
  disputes: ['person', 'section', 'record'],
  joins: ['person', 'stays'],
} as const satisfies { [Name in SectionName]?: readonly (keyof Sections[Name])[] }

type Anchored = keyof typeof ANCHORS

/** Anchors never change: a card's number, line and person; the person of a certificate; the item of a rating. */
export function checkAnchors(index: FactIndex, problems: ProblemList): void {
  for (const section of Object.keys(ANCHORS) as Anchored[]) checkSection(section, index, problems)
  checkNumbers(index.withPartial('cards'), problems)
  checkSharedIds(index, problems)
  checkKindsOfSuspension(index, problems)
  checkWords(index, problems)
}

function checkSection(section: Anchored, index: FactIndex, problems: ProblemList): void {
  for (const [id, versions] of index.placedById(section)) {
    const first = versions[0]
    if (first === undefined) continue
    for (const version of versions.slice(1)) {
      for (const field of ANCHORS[section]) {
        const before = anchorText(first.fact, field)
        const now = anchorText(version.fact, field)
        if (before === now || before === undefined || now === undefined) continue
        const other = writePath(stepsTo(first))
        problems.add([...stepsTo(version), field], now, {
          kind: 'anchor-changed',
          id,
          field,
          before,
          now,
          other,
        })
      }
    }
  }
}

function anchorText(fact: object, field: string): string | undefined {
  const value = (fact as Record<string, unknown>)[field]
  if (value === undefined) return undefined
  return typeof value === 'string' || typeof value === 'number' ? String(value) : JSON.stringify(value)
}

/** A number belongs to one person, and each line of it to one card. */
function checkNumbers(cards: readonly PartLocated<'cards'>[], problems: ProblemList): void {
  const holders = new Map<string, { id: string; person: string; other: string }>()
  const owners = new Map<string, { id: string; other: string }>()
  for (const card of cards) {
    const { id, number, line, person } = card.fact
    if (id === undefined || number === undefined) continue
    const own = writePath(stepsTo(card))
    const holder = holders.get(number)
    if (person !== undefined && holder === undefined) holders.set(number, { id, person, other: own })
    else if (person !== undefined && holder !== undefined && holder.person !== person && holder.id !== id) {
      const { person: otherPerson, other } = holder
      const figures = { kind: 'number-of-two-people', number, person, otherPerson, other } as const
      problems.add([...stepsTo(card), 'number'], number, figures)
    }
    if (line === undefined) continue
    const key = `${line} ${number}`
    const owner = owners.get(key)
    if (owner === undefined) owners.set(key, { id, other: own })
    else if (owner.id !== id) {
      const figures = { kind: 'line-of-two-cards', number, line, otherCard: owner.id } as const
      problems.add([...stepsTo(card), 'line'], line, { ...figures, other: owner.other })
    }
  }
}

/** Items and expected work are asked by id alike, so an id is of one of the two. */
function checkSharedIds(index: FactIndex, problems: ProblemList): void {
  const items = index.placedById('items')
  for (const [id, versions] of index.placedById('expectedWork')) {
    const item = items.get(id)?.[0]
    const work = versions[0]
    if (item === undefined || work === undefined) continue
    problems.add([...stepsTo(work), 'id'], id, {
      kind: 'id-in-two-sections',
      id,
      other: writePath(stepsTo(item)),
    })
  }
}

/** A suspension that only a decision ends is not made one that ends by itself: that would lift it without a decision. */
function checkKindsOfSuspension(index: FactIndex, problems: ProblemList): void {
  const decided = new Map<string, { kind: string; other: string }>()
  for (const located of index.of('suspensions')) {
    const { id, kind } = located.fact
    if (kind !== 'administrative') decided.set(id, { kind, other: writePath(stepsTo(located)) })
  }
  for (const located of index.of('suspensions')) {
    const { id, kind: now } = located.fact
    const first = decided.get(id)
    if (now !== 'administrative' || first === undefined) continue
    const { kind: before, other } = first
    problems.add([...stepsTo(located), 'kind'], now, {
      kind: 'anchor-changed',
      id,
      field: 'kind',
      before,
      now,
      other,
    })
  }
}

/** Words that an official has resolved stay the words that were read: new words are a restriction with an id of its own. */
function checkWords(index: FactIndex, problems: ProblemList): void {
  const resolved = new Set(index.of('resolutions').map(({ fact }) => `${fact.card} ${fact.restriction}`))
  const read = new Map<string, { text: string; other: string }>()
  for (const located of index.of('cards')) {
    for (const [at, restriction] of located.fact.restrictions.entries()) {
      const key = `${located.fact.id} ${restriction.id}`
      if (restriction.kind !== 'words' || !resolved.has(key)) continue
      const path = [...stepsTo(located), 'restrictions', at, 'text']
      const first = read.get(key)
      if (first === undefined) read.set(key, { text: restriction.text, other: writePath(path) })
      else if (first.text !== restriction.text)
        problems.add(path, restriction.text, {
          kind: 'anchor-changed',
          id: restriction.id,
          field: 'text',
          before: first.text,
          now: restriction.text,
          other: first.other,
        })
    }
  }
}
