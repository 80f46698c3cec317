import type { Change, Finding, Work } from '../../lib/core/authority/answer.ts'
import type { Question } from '../../lib/core/authority/question.ts'
import type { Records } from '../../lib/core/authority/records.ts'
import type { Line } from './answer.ts'
import { stateOn } from './card-days.ts'
import { dayNumber, dayText, joinDays } from './days.ts'
import * as altered from './altered-records.ts'

/** What is asked, and of which records: what a change changes. */
export type Ground = { records: Records; work: Work }

/** A change with the ways in which it could turn out; the best of them is taken. */
export type Candidate = { change: Change; ways: ((ground: Ground) => Ground)[] }

type OnDay<Kind extends Finding['kind']> = { day: number; finding: Extract<Finding, { kind: Kind }> }

/** Every change that one of the findings of the days asked calls for. */
export function candidatesFor(question: Question, line: Line, days: readonly number[]): Candidate[] {
  const all = days.flatMap((day) => line.at(day).findings.map((finding) => ({ day, finding })))
  const of = <Kind extends Finding['kind']>(...kinds: Kind[]): OnDay<Kind>[] =>
    all.filter((one): one is OnDay<Kind> => (kinds as string[]).includes(one.finding.kind))
  return [
    ...renewals(question, line, of('card-no-longer-valid')),
    ...certificateRenewals(question, line, of('certificate-lapsed', 'certificate-delivery')),
    ...missingCertificates(question, line, of('certificate-not-on-record')),
    ...unseenCertificates(of('certificate-not-seen')),
    ...supervisors(of('needs-supervisor', 'training-only')),
    ...missingMeanings(of('words-unresolved')),
    ...missingRatings(question, of('complexity-unrated')),
    ...missingPermissions(line, of('guardian-permission-missing')),
    ...missingAgreements(of('no-agreement')),
    ...missingFacts(line, of('not-on-record')),
  ]
}

/** Puts findings together that share a text, with the records of all. */
function grouped<Kind extends Finding['kind']>(
  found: readonly OnDay<Kind>[],
  textOf: (finding: Extract<Finding, { kind: Kind }>) => string,
): { text: string; found: OnDay<Kind>[]; records: string[] }[] {
  const groups = new Map<string, OnDay<Kind>[]>()
  for (const one of found) {
    const text = textOf(one.finding)
    groups.set(text, [...(groups.get(text) ?? []), one])
  }
  return [...groups].map(([text, group]) => ({ text, found: group, records: recordsOf(group) }))
}

function recordsOf(found: readonly { finding: Finding }[]): string[] {
  return [...new Set(found.flatMap((one) => one.finding.records))].sort()
}

/** For a card in force on the first day that runs out in the span; never for one that a decision ended. */
function renewals(
  question: Question,
  line: Line,
  found: readonly OnDay<'card-no-longer-valid'>[],
): Candidate[] {
  const ranOut = found.filter((one) => one.finding.ended === undefined)
  return recordsOf(ranOut).flatMap((card): Candidate[] => {
    const read = line.asked.cards.find((one) => one.card.id === card)
    if (read?.last === undefined || stateOn(read, dayNumber(question.first)) !== 'in-force') return []
    const by = dayText(read.last)
    if (by < question.today) return []
    const dayAfter = dayText(read.last + 1)
    return [
      {
        change: { kind: 'renewal-evaluation', card, by },
        ways: [onRecords((records) => altered.withRenewal(records, card, dayAfter))],
      },
    ]
  })
}

function certificateRenewals(
  question: Question,
  line: Line,
  found: readonly OnDay<'certificate-lapsed' | 'certificate-delivery'>[],
): Candidate[] {
  return grouped(found, (finding) => finding.subject).flatMap(({ text: subject, found: fails }) => {
    const by = dayText(Math.min(...fails.map((one) => one.day)))
    if (by < question.today) return []
    const way = onRecords((records) => altered.withCertificate(records, line.asked.id, subject, by))
    return [{ change: { kind: 'renew-certificate', subject, by }, ways: [way] }]
  })
}

function missingCertificates(
  question: Question,
  line: Line,
  found: readonly OnDay<'certificate-not-on-record'>[],
): Candidate[] {
  return grouped(found, (finding) => finding.subject).map(({ text: subject, records: ids }) => ({
    change: { kind: 'record-missing-fact', what: 'certificate', subject, records: ids },
    ways: [
      onRecords((records) =>
        ids.length === 0
          ? altered.withCertificate(records, line.asked.id, subject, altered.LONG_AGO)
          : altered.withMissingDays(records, ids, question.first),
      ),
    ],
  }))
}

function unseenCertificates(found: readonly OnDay<'certificate-not-seen'>[]): Candidate[] {
  return grouped(found, (finding) => finding.subject).map(({ text: subject, records: ids }) => ({
    change: { kind: 'have-seen', subject, records: ids },
    ways: [onRecords((records) => altered.withSeen(records, ids))],
  }))
}

function supervisors(found: readonly OnDay<'needs-supervisor' | 'training-only'>[]): Candidate[] {
  const named = found.filter((one) => one.finding.supervisor !== undefined)
  return grouped(
    named,
    (finding) => `${finding.kind} ${finding.supervisor ?? ''} ${trainersOf(finding).join(' ')}`,
  ).map(({ text, found: needs }) => {
    const [kind = '', level = '', ...trainers] = text.split(' ').filter((word) => word !== '')
    const days = joinDays([...new Set(needs.map((one) => one.day))])
    const under = trainers.length === 0 ? {} : { trainers }
    const trainer = kind === 'training-only'
    return { change: { kind: 'add-supervisor', level, trainer, ...under, days }, ways: [] }
  })
}

/** Those whom an assignment names; of a level, nobody by name. */
export function trainersOf(finding: Finding): readonly string[] {
  return finding.kind === 'training-only' ? (finding.trainers ?? []) : []
}

function missingMeanings(found: readonly OnDay<'words-unresolved'>[]): Candidate[] {
  if (found.length === 0) return []
  const ids = recordsOf(found)
  const change = { kind: 'record-missing-fact', what: 'meaning-of-words', records: ids } as const
  return [{ change, ways: [onRecords((records) => altered.withoutWords(records, ids))] }]
}

function missingRatings(question: Question, found: readonly OnDay<'complexity-unrated'>[]): Candidate[] {
  if (found.length === 0) return []
  const { item } = question.work
  const change = {
    kind: 'record-missing-fact',
    what: 'rating',
    records: item === undefined ? [] : [item],
  } as const
  return [{ change, ways: [withRating] }]
}

/** A rating as low as may be: what was raised stays raised. */
function withRating({ records, work }: Ground): Ground {
  const raised = records.raises.filter((raise) => raise.item === work.item).map((raise) => raise.complexity)
  const complexity = (['high', 'moderate'] as const).find((one) => raised.includes(one)) ?? 'least'
  return { records, work: { ...work, complexity } }
}

function missingPermissions(line: Line, found: readonly OnDay<'guardian-permission-missing'>[]): Candidate[] {
  const missing = found.filter((one) => one.finding.says === 'not-on-record' || one.finding.says === 'ended')
  if (missing.length === 0) return []
  const { id } = line.asked
  const change = {
    kind: 'record-missing-fact',
    what: 'guardian-permission',
    records: recordsOf(missing),
  } as const
  return [{ change, ways: [onRecords((records) => altered.withPermission(records, id, change.records))] }]
}

function missingAgreements(found: readonly OnDay<'no-agreement'>[]): Candidate[] {
  const missing = found.filter(({ finding: { says } }) => says === 'not-on-record' || says === 'no-last-day')
  if (missing.length === 0) return []
  const ids = recordsOf(missing)
  const change = { kind: 'record-missing-fact', what: 'agreement', records: ids } as const
  return [{ change, ways: [onRecords((records) => altered.withAgreements(records, ids))] }]
}

function missingFacts(line: Line, found: readonly OnDay<'not-on-record'>[]): Candidate[] {
  return grouped(found, (finding) => finding.what).flatMap(({ found: missing, records: ids }) => {
    const what = missing[0]?.finding.what
    if (what === undefined) return []
    const ways = waysToKnow(line, what, ids)
    return ways.length === 0 ? [] : [{ change: { kind: 'record-missing-fact', what, records: ids }, ways }]
  })
}

type Missing = Extract<Finding, { kind: 'not-on-record' }>['what']

function waysToKnow(line: Line, what: Missing, ids: readonly string[]): Candidate['ways'] {
  const { id, records: known } = line.asked
  switch (what) {
    case 'age':
      return [onRecords((records) => altered.withAge(records, id))]
    case 'capacity':
      return [onRecords((records) => altered.asVolunteer(records, id))]
    case 'last-day':
      return [onRecords((records) => altered.withLastDay(records, ids))]
    case 'work-kinds':
      return [onRecords((records) => altered.withWorkKinds(records, ids))]
    case 'hands':
      return [onWork((work) => ({ ...work, hands: 'two' }))]
    case 'species':
      return altered
        .speciesAllowed(line.asked, ids)
        .map((species) => onWork((work) => ({ ...work, species })))
    case 'place':
      return altered
        .placesAllowed(known, line.asked, ids)
        .map((place) => onWork((work) => ({ ...work, place })))
  }
}

function onRecords(change: (records: Records) => Records): (ground: Ground) => Ground {
  return ({ records, work }) => ({ records: change(records), work })
}

function onWork(change: (work: Work) => Work): (ground: Ground) => Ground {
  return ({ records, work }) => ({ records, work: change(work) })
}
