import type { Answer, Change, CompanyDays, Finding, Note, Remedies } from '../../lib/core/authority/answer.ts'
import { byText, sortedTexts } from '../../lib/core/kernel/order.ts'
import { canonicalFinding, canonicalJson } from '../plain/findings.ts'

/** An answer as a value to compare: records, sources and the order of findings and notes left out. */
export function canonicalAnswer(answer: Omit<Answer, 'remedies'>): unknown {
  const { person, standing, spans, holdsThrough, endedBy, atLeastThrough, findings, notes } = answer
  return {
    person,
    standing,
    spans: spans.map((span) => ({
      first: span.first,
      last: span.last,
      standing: span.standing,
      findings: canonicalFindings(span.findings),
    })),
    holdsThrough,
    ...(endedBy === undefined
      ? {}
      : {
          endedBy: {
            day: endedBy.day,
            standing: endedBy.standing,
            came: canonicalFindings(endedBy.came),
            went: canonicalFindings(endedBy.went),
          },
        }),
    atLeastThrough,
    findings: canonicalFindings(findings),
    notes: sortedTexts(notes.map(canonicalNote)),
  }
}

/** A company as a value to compare: any matching of the greatest size will do, so pairs are counted. */
export function canonicalCompany(company: readonly CompanyDays[]): unknown {
  return company.map(({ first, last, learners, pairs, feasible }) => ({
    first,
    last,
    learners: [...learners]
      .sort((left, right) => byText(left.person, right.person))
      .map(({ person, standing, may }) => ({ person, standing, may: sortedTexts(may) })),
    pairs: pairs.length,
    feasible,
  }))
}

/** How many sets of remedies are told at most. */
const MOST_SETS = 5

/** Remedies as a value to compare: the records that a change names left out. */
export function canonicalRemedies(remedies: Remedies): unknown {
  const { sets, ...apart } = remedies
  const written = sets.map((set) => sortedTexts(set.map(canonicalChange)).join(' '))
  // Where there are as many as are told, equals may have been left out: their sizes and kinds say which ones may be.
  const kinds = sets.map((set) => set.map(({ kind }) => kind).join(' '))
  return { ...apart, sets: sets.length < MOST_SETS ? sortedTexts(written) : kinds }
}

function canonicalChange(change: Change): string {
  if (!('records' in change)) return canonicalJson(change)
  const { records: _records, ...figures } = change
  return canonicalJson(figures)
}

function canonicalFindings(findings: readonly Finding[]): string[] {
  return sortedTexts(findings.map(canonicalFinding))
}

function canonicalNote({ rule, records: _records, ...figures }: Note): string {
  return canonicalJson({ rule: rule?.rule, edition: rule?.edition, figures })
}
