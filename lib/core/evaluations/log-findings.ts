import type { LogRule } from '../rulebooks/kinds/logs.schema.ts'
import type { Bind, LogSide } from '../rulebooks/words.ts'
import type { BuckedCut } from './log-record.schema.ts'

/** What one rule states, and whether it was done so; no pass or fail. */
export type Stated = { rule: LogRule; verdict: 'as-stated' | 'otherwise' }

/**
 * What was seen of a log beside what the rules state. The bind that was called beside the one that the kerf showed, and a
 * saw that was pinched, are recorded; about what nobody saw nothing is stated.
 */
export type LogFinding =
  | { figure: 'bind'; called?: Bind; found?: Bind; verdict: 'as-called' | 'otherwise' | 'not-recorded' }
  | { figure: 'order'; sides: readonly LogSide[]; stated: readonly Stated[] }
  | { figure: 'offset'; measured?: number; stated: readonly Stated[] }
  | { figure: 'wedges'; set?: NonNullable<BuckedCut['wedges']>; stated: readonly Stated[] }
  | { figure: 'pinch'; pinched?: boolean }

/** The findings of a bucked log by the rules of an edition; its order goes by the bind that was found, else by the called. */
export function findingsOfLog(log: BuckedCut, rules: readonly LogRule[]): readonly LogFinding[] {
  const { bindCalled: called, bindFound: found, offset, wedges, pinched } = log
  const sides = (log.cuts ?? []).map(({ from }) => from)
  const stated = <Kind extends LogRule['kind']>(
    kind: Kind,
    isSo: (rule: Extract<LogRule, { kind: Kind }>) => boolean | undefined,
  ): Stated[] =>
    rules
      .filter((rule): rule is Extract<LogRule, { kind: Kind }> => rule.kind === kind && speaksOf(rule, log))
      .flatMap((rule) => {
        const so = isSo(rule)
        return so === undefined ? [] : [{ rule, verdict: so ? 'as-stated' : 'otherwise' } as const]
      })
  return [
    {
      figure: 'bind',
      ...(called === undefined ? {} : { called }),
      ...(found === undefined ? {} : { found }),
      verdict:
        called === undefined || found === undefined
          ? 'not-recorded'
          : called === found
            ? 'as-called'
            : 'otherwise',
    },
    {
      figure: 'order',
      sides,
      stated: stated('log.order', ({ first, last }) =>
        sides.length === 0 ? undefined : sides[0] === first && (last === undefined || sides.at(-1) === last),
      ),
    },
    {
      figure: 'offset',
      ...(offset === undefined ? {} : { measured: offset }),
      stated: stated('log.offset', () =>
        offset === undefined || new Set(sides).size < 2 ? undefined : offset > 0,
      ),
    },
    {
      figure: 'wedges',
      ...(wedges === undefined ? {} : { set: wedges }),
      stated: stated('log.wedges', ({ wedge, least }) =>
        wedges === undefined ? undefined : wedges[wedge] >= least,
      ),
    },
    { figure: 'pinch', ...(pinched === undefined ? {} : { pinched }) },
  ]
}

/** Whether a rule speaks of a log under this bind, with or without room beneath it. */
function speaksOf(rule: LogRule, { bindCalled, bindFound, roomBelow }: BuckedCut): boolean {
  if (rule.kind === 'log.offset') return true
  return (
    rule.bind === (bindFound ?? bindCalled) && (rule.roomBelow === undefined || rule.roomBelow === roomBelow)
  )
}

/** A cut that is deeper than its log is wide, by its place among the cuts. */
export type LogProblem = { kind: 'deeper-than-the-log'; at: number; inches: number; diameter: number }

/** What of a log's measurements cannot be. */
export function problemsOfLog({ diameter, cuts = [] }: BuckedCut): readonly LogProblem[] {
  return cuts.flatMap(({ depth }, at) =>
    depth > diameter ? [{ kind: 'deeper-than-the-log', at, inches: depth, diameter } as const] : [],
  )
}
