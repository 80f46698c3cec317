import { agreementOf, type Agreement, type Comparing } from '../../core/evaluations/agreement.ts'
import type { AgreementFile } from '../../core/evaluations/agreement-file.schema.ts'
import { SEEDS } from '../../core/evaluations/bootstrap.ts'
import { success, type Result } from '../../core/kernel/result.ts'
import { drawnSentence, pairLine, wholeLine } from '../../wording/agreement.ts'
import { joinedByAnd } from '../../wording/lists.ts'
import type { Given } from '../arguments.ts'
import type { Command } from '../command.ts'
import { PROGRAM } from '../help.ts'
import { misuse, type Refusal } from '../outcome.ts'
import { printableText } from '../printable.ts'
import { onlyOperand } from '../question.ts'
import { readAgreementFile } from '../read-agreement.ts'

const USUAL_SEED = 1
const DRAWS = 2000
const NOTICE = 'Agreement says that evaluators score alike, and not that they score right.'

/** How far the evaluators of a calibration day agree. */
export const agreementCommand: Command = {
  name: 'agreement',
  summary: 'how far evaluators agree who scored the same cuts',
  usage: ['agreement FILE [--quadratic] [--seed N]'],
  about: [
    'FILE is a JSON file of the format kerfbook-agreement/1: the scale with its terms, and each evaluator’s last score of an item of a cut. A score that the scale calls missing makes no pair.',
    'Under 20 pairs (or as many as the file says) no figure is shown. Where all scores are the same, κ and α are undefined; that is said, and is not the same as agreeing.',
  ],
  options: {
    quadratic: { says: 'weigh κ by steps squared, in place of steps' },
    seed: {
      value: 'N',
      says: `from what the intervals are drawn, in place of the file’s seed or ${USUAL_SEED}`,
    },
    json: { says: 'print data' },
  },
  examples: [`${PROGRAM} agreement seeds/examples/calibration-day.json`],
  run: (given) => {
    const path = onlyOperand(given, 'FILE')
    if (!path.ok) return path
    const seed = seedOf(given)
    if (!seed.ok) return seed
    const file = readAgreementFile(path.value)
    if (!file.ok) return file
    const comparing = comparingBy(file.value, seed.value, given.flags.has('quadratic'))
    const agreement = agreementOf(file.value.marks, comparing)
    return success(
      given.flags.has('json')
        ? `${JSON.stringify({ format: 'kerfbook-agreement-figures/1', notice: NOTICE, invented: file.value.invented === true, ...comparing, ...agreement }, null, 2)}\n`
        : printableText(linesOf(file.value, agreement, comparing)),
    )
  },
}

function seedOf({ values }: Given): Result<number | undefined, Refusal> {
  const typed = values.get('seed')
  if (typed === undefined) return success(undefined)
  const seed = Number(typed)
  return /^\d{1,10}$/.test(typed) && seed >= SEEDS.least && seed <= SEEDS.most
    ? success(seed)
    : misuse(`--seed wants a whole number from ${SEEDS.least} to ${SEEDS.most}.`)
}

function comparingBy(
  { scale, leastPairs, seed: ofFile }: AgreementFile,
  seed: number | undefined,
  isQuadratic: boolean,
): Comparing {
  const counting = scale.filter(({ missing }) => missing !== true).map(({ score }) => score)
  return {
    scale: counting.sort((left, right) => left - right),
    weighting: isQuadratic ? 'quadratic' : 'linear',
    leastPairs,
    draws: DRAWS,
    seed: seed ?? ofFile ?? USUAL_SEED,
  }
}

function linesOf(file: AgreementFile, agreement: Agreement, comparing: Comparing): string[] {
  const { weighting, leastPairs, draws, seed } = comparing
  const { missing } = agreement
  return [
    ...(file.invented === true ? ['These marks are invented.'] : []),
    `The scale: ${joinedByAnd(file.scale.map(({ score, term, missing: isMissing }) => `${score} ${term}${isMissing === true ? ' (makes no pair)' : ''}`))}.`,
    `${missing === 1 ? '1 score is' : `${missing} scores are`} missing.`,
    '',
    `All items: ${wholeLine(agreement.whole, leastPairs)}.`,
    '',
    'Item by item:',
    ...agreement.items.map(({ item, whole }) => `  ${item}: ${wholeLine(whole, leastPairs)}.`),
    '',
    'Two by two:',
    ...agreement.pairs.map((pair) => `  ${pairLine(pair, weighting, leastPairs)}.`),
    '',
    drawnSentence(agreement, draws, seed),
    NOTICE,
  ]
}
