import type { Sections } from '../../core/authority/records.ts'
import type { Program } from '../../core/program/program.schema.ts'
import type { Fact, SectionName } from '../../core/program/sections.ts'

/** The person whom a version of a record is about; nothing where it is about nobody or about many. */
export type OwnerOf = (section: SectionName, fact: Fact) => string | undefined

/** Makes ready to tell whom a record is about: itself, by its card, or by what it lifts. */
export function factOwners({ cards, suspensions }: Pick<Program, 'cards' | 'suspensions'>): OwnerOf {
  const byCard = new Map(cards.map((card) => [card.id, card.person]))
  const byNumber = new Map(cards.map((card) => [card.number, card.person]))
  const stopped = (fact: Sections['suspensions']) =>
    fact.subject.kind === 'person'
      ? fact.subject.person
      : fact.subject.kind === 'card'
        ? byNumber.get(fact.subject.number)
        : undefined
  const bySuspension = new Map(suspensions.map((fact) => [fact.id, stopped(fact)]))
  return (section, fact) => {
    if (section === 'people') return fact.id
    if (section === 'suspensions') return bySuspension.get(fact.id)
    if ('person' in fact) return fact.person
    if ('suspension' in fact) return bySuspension.get(fact.suspension)
    if ('card' in fact) return byCard.get(fact.card)
    return 'of' in fact && fact.of.kind === 'card' ? byCard.get(fact.of.card) : undefined
  }
}
