import type { Records } from '../authority/records.ts'
import { daysUntil, toEpochDay, type CalendarDate } from '../calendar/dates.ts'
import type { Card } from '../cards/cards.schema.ts'
import { longerThanTerm } from '../cards/terms.ts'
import { inForceOn, type EditionIndex } from '../rulebooks/edition-index.ts'
import { LastDays } from './last-days.ts'
import type { TellDoubt } from './tell-doubt.ts'

/** What is doubtful about cards that are good on the day of the last entry, or later. */
export class CardDoubts {
  private readonly ended: ReadonlySet<string>
  private readonly resolved: ReadonlySet<string>
  private readonly lastDays: LastDays

  /** `today` is the day of the last entry. */
  constructor(
    records: Records,
    private readonly editions: readonly EditionIndex[],
    private readonly today: CalendarDate,
    private readonly doubt: TellDoubt,
  ) {
    const before = records.endings.filter((ending) => ending.firstDay <= today)
    this.ended = new Set(before.map((ending) => ending.card))
    this.resolved = new Set(records.resolutions.map(({ card, restriction }) => `${card} ${restriction}`))
    this.lastDays = new LastDays(records)
  }

  look(card: Card): void {
    const { id, carriedIn } = card
    const lastDay = this.lastDays.of(card)
    if (this.ended.has(id) || (lastDay !== undefined && lastDay < this.today)) return
    if (lastDay === undefined) this.doubt(card, { kind: 'card-without-last-day' })
    if (card.workKinds === 'not-stated') this.doubt(card, { kind: 'work-kinds-not-stated' })
    if (carriedIn !== undefined) {
      const editions = this.editions.filter(({ edition }) => edition.book === card.book)
      const longer = longerThanTerm(card, editions)
      if (longer !== undefined) {
        const { lastDay, termLastDay } = longer
        this.doubt(card, { kind: 'longer-than-term', lastDay, termLastDay })
      }
      const rule = inForceOn(editions, toEpochDay(this.today))?.all('card.reconciled')[0]
      this.lookAtReconciling(card, carriedIn.lastReconciled, rule?.days)
    }
    for (const restriction of card.restrictions) {
      if (restriction.kind !== 'words' || this.resolved.has(`${id} ${restriction.id}`)) continue
      this.doubt(card, { kind: 'words-unresolved', restriction: restriction.id, text: restriction.text })
    }
  }

  /** A day of reconciling that cannot be is told whatever the book wants; `within` is absent where it wants none. */
  private lookAtReconciling(
    card: Card,
    lastReconciled: CalendarDate | undefined,
    within: number | undefined,
  ): void {
    if (lastReconciled === undefined) {
      if (within !== undefined) this.doubt(card, { kind: 'not-reconciled', within })
      return
    }
    if (lastReconciled > this.today)
      this.doubt(card, { kind: 'reconciled-after-last-entry', lastReconciled, lastEntry: this.today })
    if (lastReconciled < card.effectiveDay) {
      const { effectiveDay } = card
      this.doubt(card, { kind: 'reconciled-before-card', lastReconciled, effectiveDay })
    }
    const days = daysUntil(lastReconciled, this.today)
    if (within !== undefined && days > within)
      this.doubt(card, { kind: 'not-reconciled', within, lastReconciled, days })
  }
}
