import type { Sections } from '../authority/records.ts'
import { stepsTo, type FactIndex, type Located } from './fact-index.ts'
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
  checkNumbers(index.of('cards'), problems)
  checkSharedIds(index, problems)
}

function checkSection(section: Anchored, index: FactIndex, problems: ProblemList): void {
  for (const [id, versions] of index.byId(section)) {
    const first = versions[0]
    if (first === undefined) continue
    for (const version of versions.slice(1)) {
      for (const field of ANCHORS[section]) {
        const before = anchorText(first.fact, field)
        const now = anchorText(version.fact, field)
        if (before === now) continue
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

function anchorText(fact: object, field: string): string {
  return String((fact as Record<string, unknown>)[field])
}

/** A number belongs to one person, and each line of it to one card. */
function checkNumbers(cards: readonly Located<'cards'>[], problems: ProblemList): void {
  const holders = new Map<string, Located<'cards'>>()
  const lines = new Map<string, Located<'cards'>>()
  for (const card of cards) {
    const { id, number, line, person } = card.fact
    const holder = holders.get(number)
    if (holder === undefined) holders.set(number, card)
    else if (holder.fact.person !== person && holder.fact.id !== id) {
      const figures = {
        kind: 'number-of-two-people',
        number,
        person,
        otherPerson: holder.fact.person,
      } as const
      problems.add([...stepsTo(card), 'number'], number, { ...figures, other: writePath(stepsTo(holder)) })
    }
    const key = `${line} ${number}`
    const owner = lines.get(key)
    if (owner === undefined) lines.set(key, card)
    else if (owner.fact.id !== id) {
      const figures = { kind: 'line-of-two-cards', number, line, otherCard: owner.fact.id } as const
      problems.add([...stepsTo(card), 'line'], line, { ...figures, other: writePath(stepsTo(owner)) })
    }
  }
}

/** Items and expected work are asked by id alike, so an id is of one of the two. */
function checkSharedIds(index: FactIndex, problems: ProblemList): void {
  for (const [id, versions] of index.byId('expectedWork')) {
    const item = index.versions('items', id)[0]
    const work = versions[0]
    if (item === undefined || work === undefined) continue
    problems.add([...stepsTo(work), 'id'], id, {
      kind: 'id-in-two-sections',
      id,
      other: writePath(stepsTo(item)),
    })
  }
}
