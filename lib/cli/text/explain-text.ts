import type { Finding, Met } from '../../core/authority/answer.ts'
import type { ExplainedDays } from '../../core/authority/explain.ts'
import { recordedText, besideText, spokenByText } from '../../wording/chains.ts'
import { onDays } from '../../wording/days.ts'
import { findingSentence } from '../../wording/findings.ts'
import { capitalised } from '../../wording/lists.ts'
import { metSentence } from '../../wording/met.ts'
import { ruleSourceText } from '../../wording/rules.ts'
import { standingText } from '../../wording/standings.ts'
import type { ShownRecord } from '../../wording/record-index.ts'
import type { RecordsById } from '../explanation-json.ts'
import type { TextContext } from './person-text.ts'

/** The whole chain behind one person's answer, run by run: every requirement with its rule and its records. */
export function explainLines(
  explained: readonly ExplainedDays[],
  context: TextContext,
  records: RecordsById,
): string[] {
  const told = new ToldRecords(records)
  return explained.flatMap((days) => ['', ...runLines(days, context, told)])
}

function runLines(days: ExplainedDays, context: TextContext, records: ToldRecords): string[] {
  const { names, supervisors } = context
  return [
    `${capitalised(onDays(days))}: ${standingText(days.standing, supervisors)}.`,
    `  ${capitalised(spokenByText(days.spokenBy, names))}`,
    ...(days.findings.length === 0 ? ['  Every requirement is met.'] : ['  Not met']),
    ...days.findings.flatMap((finding) => stepLines('-', finding, findingSentence(finding, names), records)),
    ...(days.met.length === 0 ? [] : ['  Met']),
    ...days.met.flatMap((met) => stepLines('+', met, metSentence(met, names), records)),
    ...otherLines(days.others, context, records),
  ]
}

function stepLines(sign: '+' | '-', step: Met | Finding, sentence: string, records: ToldRecords): string[] {
  return [
    `    ${sign} ${sentence}`,
    ...(step.rule === undefined ? [] : [`        ${ruleSourceText(step.rule)}`]),
    ...step.records.flatMap((id) => records.lines(id)).map((line) => `        ${line}`),
  ]
}

/** Tells each record in full the first time, and by its id afterwards. */
class ToldRecords {
  private readonly told = new Set<string>()

  constructor(private readonly records: RecordsById) {}

  lines(id: string): string[] {
    return this.records(id).map((record) => {
      const key = `${record.section}/${record.id}`
      if (this.told.has(key)) return `record ${key}, as above`
      this.told.add(key)
      return recordText(record)
    })
  }
}

function recordText(record: ShownRecord): string {
  return `record ${record.section}/${record.id}: ${record.says} (${recordedText(record)})`
}

function otherLines(others: ExplainedDays['others'], context: TextContext, records: ToldRecords): string[] {
  if (others.length === 0) return []
  return [
    '  What else is on record, and gives no more',
    ...others.flatMap(({ spokenBy, standing, findings }) => [
      `    ${capitalised(besideText(spokenBy, context.names))} By it: ${standingText(standing, context.supervisors)}.`,
      ...findings
        .flatMap((finding) => stepLines('-', finding, findingSentence(finding, context.names), records))
        .map((line) => `  ${line}`),
    ]),
  ]
}
