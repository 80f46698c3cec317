import { expect } from 'vitest'
import type { CompanyDays } from '../../../lib/core/authority/answer.ts'
import { ask } from '../../../lib/core/authority/ask.ts'
import { openRecords } from '../../../lib/core/authority/authority-index.ts'
import type { CompanyMember } from '../../../lib/core/authority/question.ts'
import type { Records } from '../../../lib/core/authority/records.ts'
import type { Edition } from '../../../lib/core/rulebooks/books.schema.ts'
import type { Rule, RuleOf } from '../../../lib/core/rulebooks/rules.schema.ts'
import { card } from '../../builders/cards.ts'
import { adult } from '../../builders/people.ts'
import { records, withSection, type Part } from '../../builders/records.ts'
import { question, work, type WorkSaid } from '../../builders/work.ts'

/** A company asked about some work from 8 July 2027 on. */
export type AskedCompany = {
  facts: readonly Part[] | Records
  company: readonly (string | CompanyMember)[]
  persons?: readonly string[]
  work?: WorkSaid
  last?: string
}

/** The days of a company's answer. */
export function companyOf({
  facts,
  company,
  persons,
  work: said,
  last = '2027-07-08',
}: AskedCompany): readonly CompanyDays[] {
  const base = 'people' in facts ? facts : records(...facts)
  const members = company.map((member) => (typeof member === 'string' ? { person: member } : member))
  const asked = question(work(said), '2027-07-08', last, {
    company: members,
    ...(persons === undefined ? {} : { persons }),
  })
  return ask(openRecords(base), asked).company ?? []
}

/** Each run of days as `8-9: a own-level of b,c; a under b; short a of b (1)`. */
export function companyTold(days: readonly CompanyDays[]): string[] {
  return days.map(({ first, last, learners, pairs, feasible, short }) => {
    expect(feasible).toBe(short === undefined)
    const asking = learners.map(
      ({ person: id, standing, may }) => `${id} ${standing} of ${may.join(',') || 'nobody'}`,
    )
    const served = pairs.map(({ learner, supervisor }) => `${learner} under ${supervisor}`)
    const lacking =
      short === undefined
        ? []
        : [
            `short ${short.learners.join(',')} of ${short.supervisors.join(',') || 'nobody'} (${short.places})`,
          ]
    const what = [...asking, ...served, ...lacking]
    return `${Number(first.slice(8))}-${Number(last.slice(8))}: ${what.length === 0 ? 'nobody asks' : what.join('; ')}`
  })
}

/** Somebody with one card. */
export function sawyer(id: string, level: string, said: Parameters<typeof card>[2] = {}): Part {
  return adult(id, { cards: [card(id, level, said)] })
}

/** Two A, a B and a C, one without a card, and a B whose certificates are not on record. */
export const crew: readonly Part[] = [
  sawyer('a-1', 'A'),
  sawyer('a-2', 'A'),
  sawyer('b-1', 'B'),
  sawyer('c-1', 'C'),
  adult('packer'),
  adult('unknown', { certificates: [], cards: [card('unknown', 'B')] }),
]

/** The federal book with another rule of one kind. */
export function changed<Kind extends 'supervision' | 'supervision.trainer'>(
  base: Records,
  kind: Kind,
  change: Partial<RuleOf<Kind>>,
): Records {
  const editions = base.editions.map((edition): Edition => ({
    ...edition,
    rules: edition.rules.map((rule): Rule => (rule.kind === kind ? { ...rule, ...change } : rule)),
  }))
  return withSection(base, 'editions', editions)
}
