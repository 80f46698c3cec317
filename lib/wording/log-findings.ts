import type { LogFinding, LogProblem, Stated } from '../core/evaluations/log-findings.ts'
import type { BuckedCut } from '../core/evaluations/log-record.schema.ts'
import { inchesWords } from './cut-findings.ts'
import { bindWords, logSideWords, wedgeWords } from './cut-words.ts'
import { joinedByAnd } from './lists.ts'
import { markWords } from './work-words.ts'

/** One thing that was seen of a log. */
export function logFindingSentence(finding: LogFinding): string {
  switch (finding.figure) {
    case 'bind': {
      const { called, found, verdict } = finding
      const said = called === undefined ? 'not recorded' : bindWords[called]
      const shown = found === undefined ? 'not recorded' : bindWords[found]
      const beside =
        verdict === 'not-recorded'
          ? ''
          : verdict === 'as-called'
            ? ' The kerf showed what was called.'
            : ' The kerf showed another bind than was called.'
      return `Bind: called ${said}, found ${shown}.${beside}`
    }
    case 'order':
      return finding.sides.length === 0
        ? 'Order of the cuts: not recorded.'
        : `Order of the cuts: from ${finding.sides.map((side) => logSideWords[side]).join(', then from ')}.`
    case 'offset':
      return finding.measured === undefined
        ? 'Offset: not measured.'
        : `Offset: the cuts lie ${inchesWords(finding.measured)} apart along the log.`
    case 'wedges':
      return finding.set === undefined
        ? 'Wedges: not recorded.'
        : `Wedges: ${joinedByAnd([`${finding.set.ordinary} ${wedgeWords.ordinary}`, `${finding.set.hanging} ${wedgeWords.hanging}`])}.`
    case 'pinch':
      return finding.pinched === undefined
        ? 'Pinch: not recorded.'
        : `Pinch: the kerf ${finding.pinched ? 'closed on the saw' : 'did not close on the saw'}. Recorded, and not judged.`
  }
}

/** Whether something was done as a rule states, with the rule, its source and how well it is supported. */
export function statedSentence({ rule, verdict }: Stated): string {
  const { id, says, source, mark } = rule
  return `${verdict === 'as-stated' ? 'As the rule states' : 'Otherwise than the rule states'}: ${says} ${source} (${id}, ${markWords[mark]}).`
}

/** What of a log's measurements cannot be, at the measurement. */
export function logProblemSentence({ at, inches, diameter }: LogProblem): string {
  return `log.cuts[${at}].depth: ${inchesWords(inches)} is more than the log is wide, ${inchesWords(diameter)}.`
}

/** The words on the drawing of a log, and the drawing in sentences. */
export function logWords(name: string, log: BuckedCut, findings: readonly LogFinding[]) {
  const { diameter, cuts = [], offset } = log
  return {
    title: `${name}: the log from its thicker end and from the side, to one scale`,
    desc: [
      `Log ${inchesWords(diameter)} across.`,
      ...findings.map(logFindingSentence),
      ...cuts.map(
        ({ from, depth }, at) => `Cut ${at + 1} from ${logSideWords[from]}, ${inchesWords(depth)} deep.`,
      ),
      'Cuts from the left and the right are drawn from the end alone. What was not measured is not drawn.',
    ].join(' '),
    fromEnd: 'From the thicker end',
    fromSide: 'From the side',
    cuts: cuts.map(({ from, depth }, at) => `${at + 1}: from ${logSideWords[from]}, ${inchesWords(depth)}`),
    inches: (count: number) => `${count} in`,
    ...(offset === undefined ? {} : { offset: `${inchesWords(offset)} apart` }),
  }
}
