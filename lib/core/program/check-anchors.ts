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
  lifts: ['suspension'],
  ratings: ['item'],
  raises: ['item'],
} as const satisfies { [Name in SectionName]?: readonly (keyof Sections[Name])[] }

type Anchored = keyof typeof ANCHORS

/** Anchors never change: a card's number, line and person; the person of a certificate; the item of a rating. */
export function checkAnchors(index: FactIndex, problems: ProblemList): void {
  for (const section of Object.keys(ANCHORS) as Anchored[]) checkSection(section, index, problems)
  checkNumbers(index.withPartial('cards'), problems)
  checkSharedIds(index, problems)
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
  return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined
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
