import type { Met } from '../core/authority/answer.ts'
import type { ExplainedDays } from '../core/authority/explain.ts'
import { findingJson, standingJson } from '../core/authority/answer-json.ts'
import type { AnswerJson } from '../core/authority/answer.schema.ts'
import type { ShownRecord } from '../wording/record-index.ts'

/** The records of the person asked about, by id. */
export type RecordsById = (id: string) => readonly ShownRecord[]

type ExplanationJson = NonNullable<AnswerJson['explanation']>

/** The whole chain behind one person's answer as data, with every record it names. */
export function explanationJson(explained: readonly ExplainedDays[], records: RecordsById): ExplanationJson {
  return explained.map((days) => {
    const ids = new Set([
      ...days.met.flatMap((met) => met.records),
      ...days.findings.flatMap((finding) => finding.records),
      ...days.others.flatMap((other) => other.findings.flatMap((finding) => finding.records)),
    ])
    return {
      first: days.first,
      last: days.last,
      ...standingJson(days.standing),
      spokenBy: spokenByJson(days.spokenBy),
      met: days.met.map(metJson),
      notMet: days.findings.map(findingJson),
      others: days.others.map((other) => ({
        spokenBy: spokenByJson(other.spokenBy),
        ...standingJson(other.standing),
        notMet: other.findings.map(findingJson),
      })),
      records: [...ids].flatMap((id) => records(id)),
    }
  })
}

function spokenByJson(spokenBy: ExplainedDays['spokenBy']): ExplanationJson[number]['spokenBy'] {
  if (spokenBy.by !== 'card') return { by: spokenBy.by }
  const { card, level } = spokenBy
  return { by: 'card', card, ...(level === undefined ? {} : { level }) }
}

function metJson(met: Met): ExplanationJson[number]['met'][number] {
  const { kind, rule, records, ...figures } = met
  return {
    kind,
    rule: rule.rule,
    source: rule.source,
    mark: rule.mark,
    edition: rule.edition,
    records: [...records],
    figures,
  }
}
