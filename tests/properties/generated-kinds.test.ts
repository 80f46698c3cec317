import { expect, it } from 'vitest'
import type { FindingKind, NoteKind } from '../../lib/core/authority/answer.ts'
import { ask, openRecords } from '../../lib/core/authority/ask.ts'
import { STANDINGS, type Standing } from '../../lib/core/rulebooks/standing.ts'
import { printFigure } from '../figures.ts'
import { caseOfSeed } from './program-generator.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { RuleKind } from '../../lib/core/rulebooks/rules.schema.ts'

const PROGRAMS = 600
/** In one of so many programs every book lacks a rule that it must hold: a rule that throws. */
const FAULTY = 10
const JUDGING: readonly RuleKind[] = ['card.days', 'card.needed', 'recognition', 'restriction', 'suspension']
const LEAST = 3

/** Every kind by name, so that a new one does not compile here until it is looked for. */
const FINDINGS: Record<FindingKind, number> = {
  'no-card': 0,
  'book-does-not-recognise': 0,
  'level-too-low': 0,
  'training-only': 0,
  'needs-supervisor': 0,
  'complexity-unrated': 0,
  'card-not-yet-valid': 0,
  'card-no-longer-valid': 0,
  'over-diameter': 0,
  'outside-places': 0,
  'outside-species': 0,
  'above-greatest-complexity': 0,
  'double-bucking-only': 0,
  'no-felling': 0,
  'words-unresolved': 0,
  'certificate-not-on-record': 0,
  'certificate-lapsed': 0,
  'certificate-not-seen': 0,
  'certificate-delivery': 0,
  suspended: 0,
  'under-age': 0,
  'guardian-permission-missing': 0,
  'no-agreement': 0,
  'outside-book': 0,
  'not-on-record': 0,
  'no-edition': 0,
  'rule-failed': 0,
}

const NOTES: Record<NoteKind, number> = {
  'rule-not-confirmed': 0,
  'sources-disagree': 0,
  'valid-only-by-a-later-order': 0,
  'successor-not-held': 0,
  'delivery-not-stated': 0,
  'longer-than-term': 0,
  'rating-provisional': 0,
}

it('[AU3] [AU65] the generator makes every kind of finding, note and standing', () => {
  const findings = { ...FINDINGS }
  const notes = { ...NOTES }
  const standings = Object.fromEntries(STANDINGS.map((name) => [name, 0])) as Record<Standing, number>
  const companies = { served: 0, short: 0 }
  for (let seed = 1; seed <= PROGRAMS; seed += 1) {
    const { records: whole, question } = caseOfSeed(seed)
    const records = seed % FAULTY === 0 ? withoutRule(whole, seed / FAULTY) : whole
    const { answers, company } = ask(openRecords(records), question)
    for (const answer of answers) {
      for (const span of answer.spans) standings[span.standing] += 1
      for (const finding of answer.findings) findings[finding.kind] += 1
      for (const note of answer.notes) notes[note.kind] += 1
    }
    for (const days of company ?? []) companies[days.feasible ? 'served' : 'short'] += 1
  }
  const counts = { ...standings, ...findings, ...notes, ...companies }
  const line = Object.entries(counts).map(([name, count]) => `${name} ${count}`)
  printFigure(`${PROGRAMS} generated programs: ${line.join(', ')}`)
  const rare = Object.entries(counts).filter(([, count]) => count < LEAST)
  expect(rare).toEqual([])
})

function withoutRule(records: Records, which: number): Records {
  const kind = JUDGING[which % JUDGING.length]
  const editions = records.editions.map((edition) => ({
    ...edition,
    rules: edition.rules.filter((rule) => rule.kind !== kind),
  }))
  return { ...records, editions }
}
