import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findingsOfLog, problemsOfLog, type LogFinding } from '../../../lib/core/evaluations/log-findings.ts'
import { buckedCutSchema, type BuckedCut } from '../../../lib/core/evaluations/log-record.schema.ts'
import { logRulesOf } from '../../../lib/core/rulebooks/cut-rules.ts'
import { BINDS, LOG_SIDES } from '../../../lib/core/rulebooks/words.ts'
import { shippedBookFiles } from '../../builders/shipped-book-files.ts'

const RULES = logRulesOf(
  shippedBookFiles()
    .flatMap(({ editions }) => editions)
    .filter(({ id }) => id === 'federal-crosscut-2016')
    .flatMap(({ rules }) => rules),
)

const log = (more: object): BuckedCut => buckedCutSchema.parse({ diameter: 22, ...more })
const from = (...sides: readonly string[]) => sides.map((side) => ({ from: side, depth: 8 }))

/** What each rule says of one figure: its id and its verdict. */
function stated(figure: LogFinding['figure'], more: object): string[] {
  const found = findingsOfLog(log(more), RULES).find((finding) => finding.figure === figure)
  if (found === undefined || !('stated' in found)) throw new Error('no such figure')
  return found.stated.map(({ rule, verdict }) => `${rule.id} ${verdict}`)
}

describe('the bind', () => {
  it.each([
    [{ bindCalled: 'top', bindFound: 'top' }, 'as-called'],
    [{ bindCalled: 'top', bindFound: 'left' }, 'otherwise'],
    [{ bindCalled: 'left', bindFound: 'right' }, 'otherwise'],
    [{ bindCalled: 'top' }, 'not-recorded'],
    [{ bindFound: 'end' }, 'not-recorded'],
    [{}, 'not-recorded'],
  ])('[CG7] of %j is %s', (more, verdict) => {
    const { bindCalled: called, bindFound: found }: { bindCalled?: string; bindFound?: string } = more
    expect(findingsOfLog(log(more), RULES)[0]).toEqual({
      ...{ figure: 'bind', verdict },
      ...(called === undefined ? {} : { called }),
      ...(found === undefined ? {} : { found }),
    })
  })
})

// The order for each bind is from memory, but for the bottom bind without room below: Saws That Sing, 0423-2822-MTDC (2004).
describe('the order of the cuts', () => {
  it.each([
    ['top', {}, ['top', 'bottom'], 'log.order.top as-stated'],
    ['top', {}, ['bottom', 'top'], 'log.order.top otherwise'],
    ['bottom', { roomBelow: true }, ['bottom', 'top'], 'log.order.bottom as-stated'],
    ['bottom', { roomBelow: true }, ['top', 'bottom'], 'log.order.bottom otherwise'],
    ['bottom', { roomBelow: false }, ['top'], 'log.order.bottom.no-room as-stated'],
    ['bottom', { roomBelow: false }, ['top', 'bottom'], 'log.order.bottom.no-room otherwise'],
    ['left', {}, ['left', 'right'], 'log.order.left as-stated'],
    ['left', {}, ['right', 'left'], 'log.order.left otherwise'],
    ['right', {}, ['right', 'top', 'left'], 'log.order.right as-stated'],
    ['end', {}, ['top'], 'log.order.end as-stated'],
  ])('[CG8] under a bind of %s, %j, from %j: %s', (bindFound, more, sides, expected) => {
    expect(stated('order', { bindFound, ...more, cuts: from(...sides) })).toEqual([expected])
  })

  it('[CG8] goes by the bind that was found, and by the called one where none was', () => {
    const cuts = from('top')
    expect(stated('order', { bindCalled: 'left', bindFound: 'top', cuts })).toEqual([
      'log.order.top as-stated',
    ])
    expect(stated('order', { bindCalled: 'left', cuts })).toEqual(['log.order.left otherwise'])
  })

  it('[CG8] is stated by nothing where no order was seen, no bind is known, or no rule speaks of it', () => {
    expect(stated('order', { bindFound: 'top' })).toEqual([])
    expect(stated('order', { cuts: from('top') })).toEqual([])
    expect(stated('order', { bindFound: 'torsion', cuts: from('top') })).toEqual([])
    expect(stated('order', { bindFound: 'bottom', cuts: from('top') })).toEqual([])
  })
})

describe('offset, wedges and pinch', () => {
  it('[CG9] an offset counts only between cuts from two sides, and in one line is none', () => {
    expect(stated('offset', { cuts: from('top', 'bottom'), offset: 0.0625 })).toEqual([
      'log.offset as-stated',
    ])
    expect(stated('offset', { cuts: from('top', 'bottom'), offset: 0 })).toEqual(['log.offset otherwise'])
    expect(stated('offset', { cuts: from('top', 'top'), offset: 0 })).toEqual([])
    expect(stated('offset', { cuts: from('top', 'bottom') })).toEqual([])
  })

  // Saws That Sing, 0423-2822-MTDC (2004): two hanging wedges, at ten and two o'clock.
  it.each([
    ['one hanging wedge', { ordinary: 3, hanging: 1 }, 'otherwise'],
    ['two', { ordinary: 0, hanging: 2 }, 'as-stated'],
  ])('[CG9] under a bottom bind without room below, with %s', (_what, wedges, verdict) => {
    expect(stated('wedges', { bindFound: 'bottom', roomBelow: false, wedges })).toEqual([
      `log.wedges.bottom.no-room ${verdict}`,
    ])
    expect(stated('wedges', { bindFound: 'bottom', roomBelow: true, wedges })).toEqual([])
  })

  it('[CG9] a kerf that closed on the saw is recorded, and no rule judges it', () => {
    expect(findingsOfLog(log({ pinched: true }), RULES).at(-1)).toEqual({ figure: 'pinch', pinched: true })
    expect(findingsOfLog(log({}), RULES).at(-1)).toEqual({ figure: 'pinch' })
  })
})

describe('any log', () => {
  const drawn = fc.record(
    {
      bindCalled: fc.constantFrom(...BINDS),
      bindFound: fc.constantFrom(...BINDS),
      roomBelow: fc.boolean(),
      cuts: fc.array(
        fc.record({ from: fc.constantFrom(...LOG_SIDES), depth: fc.integer({ min: 1, max: 22 }) }),
        {
          minLength: 1,
          maxLength: 8,
        },
      ),
      offset: fc.nat({ max: 4 }),
      wedges: fc.record({ ordinary: fc.nat({ max: 4 }), hanging: fc.nat({ max: 4 }) }),
    },
    { requiredKeys: [] },
  )

  it('[CG8] has at most one order stated, turned about where left and right are', () => {
    const turned = (word: string) => (word === 'left' ? 'right' : word === 'right' ? 'left' : word)
    fc.assert(
      fc.property(drawn, (more) => {
        const { bindCalled, bindFound, cuts, ...rest } = more
        const about = {
          ...rest,
          ...(bindCalled === undefined ? {} : { bindCalled: turned(bindCalled) }),
          ...(bindFound === undefined ? {} : { bindFound: turned(bindFound) }),
          ...(cuts === undefined ? {} : { cuts: cuts.map((cut) => ({ ...cut, from: turned(cut.from) })) }),
        }
        const said = stated('order', more)
        expect(said.length).toBeLessThanOrEqual(1)
        expect(stated('order', about)).toEqual(
          said.map((line) => line.replace(/left|right/, (side) => turned(side))),
        )
      }),
    )
  })

  it('[CG6] is refused a cut that is deeper than it is wide, at the cut', () => {
    expect(
      problemsOfLog(
        log({
          cuts: [
            { from: 'top', depth: 22 },
            { from: 'bottom', depth: 22.0625 },
          ],
        }),
      ),
    ).toEqual([{ kind: 'deeper-than-the-log', at: 1, inches: 22.0625, diameter: 22 }])
  })
})
