import { describe, expect, it } from 'vitest'
import type { Answer } from '../../../lib/core/authority/answer.ts'
import type { Records } from '../../../lib/core/authority/records.ts'
import type { RuleKind } from '../../../lib/core/rulebooks/rules.schema.ts'
import { card, suspension } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import { records, withSection } from '../../builders/records.ts'
import { question, work } from '../../builders/work.ts'
import { answerAbout, spansOf, toldOf } from './told.ts'

const SUSPENDED = 'suspended because=unsafe-act form=stand-down notice=not-recorded | suspension | none'
const NO_CARD = 'no-card sawKind=crosscut workKind=bucking | card.needed | none'
const failed = (rule: string) => `rule-failed says=broken on purpose | ${rule} | unknown`
const lacking = (kind: RuleKind) =>
  `rule-failed says=the edition federal-crosscut-2016 has no rule of kind ${kind} | no rule | unknown`

const holder = records(adult('p-1', { cards: [card('p-1', 'B')] }))
const nobody = records(adult('p-1'))
const stoodDown = records(adult('p-1', { suspensions: [suspension('stop')] }))

/** The same records under books of which a figure of one rule cannot be read. */
function withBroken(base: Records, id: string, figure: string): Records {
  const editions = structuredClone(base.editions)
  const broken = editions.flatMap(({ rules }) => rules).find((rule) => rule.id === id)
  Object.defineProperty(broken, figure, {
    get: () => {
      throw new Error('broken on purpose')
    },
  })
  return withSection(base, 'editions', editions)
}

/** The same records under books without any rule of a kind. */
function without(base: Records, kind: RuleKind): Records {
  const editions = base.editions.map((edition) => ({
    ...edition,
    rules: edition.rules.filter((rule) => rule.kind !== kind),
  }))
  return withSection(base, 'editions', editions)
}

function answerFor(base: Records): Answer {
  return answerAbout(base, question(work(), '2027-07-08', '2027-07-10'))
}

describe('a rule that throws', () => {
  it('[AU6] makes unknown with the rule named', () => {
    const answer = answerFor(withBroken(holder, 'grant.bucking.B', 'cells'))
    expect(answer.standing).toBe('unknown')
    expect(toldOf(answer)).toEqual([failed('grant.bucking.B')])
    expect(answer.findings[0]?.rule).toMatchObject({ edition: 'federal-crosscut-2016', mark: 'published' })
  })

  it('[AU6] so does a rule that a book should hold and does not, and then none is named', () => {
    const answer = answerFor(without(holder, 'card.days'))
    expect(answer.standing).toBe('unknown')
    expect(toldOf(answer)).toEqual([lacking('card.days')])
    expect(answer.findings[0]).not.toHaveProperty('rule')
  })
})

describe('somebody without a card, where a rule throws', () => {
  it('[AU6] a rule of the person stands beside the card that is missing, and the answer is no', () => {
    const answer = answerFor(withBroken(nobody, 'certificate.cpr', 'subject'))
    expect(answer.standing).toBe('none')
    expect(toldOf(answer)).toEqual([NO_CARD, failed('certificate.cpr')])
  })

  it('[AU6] a book that does not say that a card is needed leaves it unknown', () => {
    const answer = answerFor(without(nobody, 'card.needed'))
    expect(spansOf(answer)).toEqual(['unknown 2027-07-08 2027-07-10'])
    expect(toldOf(answer)).toEqual([lacking('card.needed')])
  })

  it('[AU6] under such a book a suspension is still a no, on its own days', () => {
    const answer = answerFor(without(stoodDown, 'card.needed'))
    expect(spansOf(answer)).toEqual(['unknown 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-10'])
    expect(toldOf(answer)).toEqual([lacking('card.needed'), SUSPENDED])
  })

  it('[AU6] a book without a rule for suspensions leaves nobody out: no card is still a no', () => {
    const answer = answerFor(without(stoodDown, 'suspension'))
    expect(spansOf(answer)).toEqual(['none 2027-07-08 2027-07-08', 'none 2027-07-09 2027-07-10'])
    expect(toldOf(answer)).toEqual([NO_CARD, lacking('suspension')])
  })
})
