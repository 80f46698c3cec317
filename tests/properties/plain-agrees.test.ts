import fc from 'fast-check'
import { expect, it } from 'vitest'
import { ask, askBriefly, openRecords } from '../../lib/core/authority/ask.ts'
import { plainAnswer } from '../plain/answer.ts'
import { plainCompany } from '../plain/company.ts'
import { plainRemedies } from '../plain/remedies.ts'
import { COMPARED_SEED, RUNS } from '../property-runs.ts'
import { canonicalAnswer, canonicalCompany, canonicalRemedies } from './canonical.ts'
import { caseOfSeed, seeds, type Case } from './program-generator.ts'
import { shortened, written } from './shortest-case.ts'

/** The plain version asks remedies again and again, so fewer of them are compared. */
const REMEDY_RUNS = Math.ceil(RUNS / 5)

/** What both versions say of a case. */
type Compared = { fast: unknown; plain: unknown }

function agree(compare: (one: Case) => Compared, runs: number): void {
  const differs = (one: Case): boolean => {
    const { fast, plain } = compare(one)
    return JSON.stringify(fast) !== JSON.stringify(plain)
  }
  fc.assert(
    fc.property(seeds(), (seed) => {
      const found = caseOfSeed(seed)
      if (!differs(found)) return
      const shortest = shortened(found, differs)
      const { fast, plain } = compare(shortest)
      expect(fast, `seed ${seed}\n${written(shortest)}`).toEqual(plain)
    }),
    { numRuns: runs, seed: COMPARED_SEED },
  )
}

function answers({ records, question }: Case): Compared {
  const fast = askBriefly(openRecords(records), question)
  return {
    fast: fast.map(canonicalAnswer),
    plain: fast.map(({ person }) => canonicalAnswer(plainAnswer(records, question, person))),
  }
}

function companies({ records, question }: Case): Compared {
  const company = question.company ?? records.people.map(({ id }) => ({ person: id }))
  const asked = { ...question, company }
  return {
    fast: canonicalCompany(ask(openRecords(records), asked).company ?? []),
    plain: canonicalCompany(plainCompany(records, asked)),
  }
}

function remedies({ records, question }: Case): Compared {
  const fast = ask(openRecords(records), question).answers
  return {
    fast: fast.map((answer) => canonicalRemedies(answer.remedies)),
    plain: fast.map(({ person }) => canonicalRemedies(plainRemedies(records, question, person))),
  }
}

/** So long a busy machine may take over them; a quiet one takes 20 seconds. */
const SLOW = 1_200_000

it(
  '[AU1] [AU3] [AU9] [AU10] [AU11] [AU65] the fast answer is the plain answer',
  () => {
    agree(answers, RUNS)
  },
  SLOW,
)

it(
  '[AU67] [AU68] [AU69] [AU70] [AU72] the fast company is the plain company',
  () => {
    agree(companies, RUNS)
  },
  SLOW,
)

it(
  '[AU73] [AU78] [AU79] the fast remedies are the plain remedies',
  () => {
    agree(remedies, REMEDY_RUNS)
  },
  SLOW,
)
