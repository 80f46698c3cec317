import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { answered, fileWith, refusedWith } from './command-line.ts'

const STUMP = fileURLToPath(new URL('../../seeds/examples/stump.json', import.meta.url))
const file = (stump: object) =>
  fileWith(
    JSON.stringify({
      format: 'kerfbook-cut/1',
      name: 'Cut 1',
      stump: { diameter: 24, faceType: 'conventional', ...stump },
    }),
  )

const LOG = fileURLToPath(new URL('../../seeds/examples/log.json', import.meta.url))

describe('cut', () => {
  // OSHA Logging eTool (2008): a tenth of the diameter, of 22 inches 2.2; the chord of 22 at 6 1/4 is 19.84, by geometry.
  it('[CL40] of the example tells what is outside by how much, with rule and source, and judges nothing', () => {
    const text = answered('cut', STUMP)
    expect(text).toContain('This cut is invented.')
    expect(text).toContain('  Over by 0.05 in: at most 2.2 in.')
    expect(text).toContain('  Within: 17.6 in to 19.84 in.')
    expect(text).toContain('29 CFR 1910.266(h)(2)(vii) (cut.back-cut.above, published).')
    expect(text).toContain('neither pass nor fail')
    expect(text).toContain('Authority is not safety.')
  })

  it('[CL40] as data holds the same findings', () => {
    const data = JSON.parse(answered('cut', STUMP, '--json')) as {
      invented: boolean
      findings: { figure: string; allowed: { rule: string; verdict: string }[] }[]
      lay: { off: number }
    }
    expect(data.invented).toBe(true)
    expect(data.lay.off).toBe(4)
    expect(data.findings.find(({ figure }) => figure === 'hinge-thickness')?.allowed).toMatchObject([
      { rule: 'cut.hinge-thickness', verdict: 'over' },
    ])
  })

  it('[CL40] says where a book states no rule on a figure', () => {
    const text = answered('cut', STUMP, '--book', 'cooperator-crosscut')
    expect(text).toContain('This edition states no rule on it.')
    expect(text).not.toContain('Within')
  })

  it('[CL40] draws into a file that was not there, and into no other', () => {
    const path = join(dirname(fileWith('')), 'stump.svg')
    expect(answered('cut', STUMP, '--svg', path)).toContain(`The drawing is in ${path}.`)
    const drawn = readFileSync(path, 'utf8')
    expect(drawn).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/)
    expect(refusedWith(1, 'cut', STUMP, '--svg', path)).toContain('was not written')
    expect(readFileSync(path, 'utf8')).toBe(drawn)
  })

  it.each([
    ['a negative hinge', { hinge: { left: -1, right: 1 } }, 'stump.hinge.left'],
    ['a hinge thicker than the tree', { hinge: { left: 30, right: 1 } }, 'stump.hinge.left: 30 in is more'],
    ['a lay of 400°', { lay: { meant: 400, found: 10 } }, 'stump.lay.meant'],
    ['a length that is no sixteenth', { faceDepth: 6.3 }, 'stump.faceDepth'],
    ['a face that nobody cuts', { faceType: 'birdmouth' }, 'stump.faceType'],
    [
      'a face and a hinge with no room for both',
      { faceDepth: 22, hinge: { left: 3, right: 3 } },
      'stump.hinge:',
    ],
  ])('[CL40] refuses %s at its measurement', (_what, stump, said) => {
    expect(refusedWith(1, 'cut', file(stump))).toContain(said)
  })

  it('[CL40] asks back about what may be centimetres', () => {
    expect(answered('cut', file({ stumpHeight: 38 }))).toContain('Height of the stump: is 38 in right?')
  })

  it('[CL40] of a log tells bind, order, offset, wedges and pinch beside the rules, and draws it', () => {
    const text = answered('cut', LOG)
    expect(text).toContain('Bind: called top bind, found top bind. The kerf showed what was called.')
    expect(text).toContain('  As the rule states: Under a top bind the cut begins from the top.')
    expect(text).toContain('neither pass nor fail')
    const path = join(dirname(fileWith('')), 'log.svg')
    answered('cut', LOG, '--svg', path)
    expect(readFileSync(path, 'utf8')).toContain('data-part="end-2"')
    const data = JSON.parse(answered('cut', LOG, '--json')) as { findings: object[] }
    expect(data.findings).toContainEqual({
      figure: 'order',
      sides: ['top', 'bottom'],
      stated: [{ rule: 'log.order.top', verdict: 'as-stated' }],
    })
  })

  it.each([
    ['neither a stump nor a log', {}, 'a cut is either a stump or a log'],
    [
      'both',
      { log: { diameter: 20 }, stump: { diameter: 20, faceType: 'conventional' } },
      'a cut is either a stump or a log',
    ],
    [
      'a cut deeper than the log',
      { log: { diameter: 20, cuts: [{ from: 'top', depth: 21 }] } },
      'log.cuts[0].depth: 21 in is more than the log is wide, 20 in.',
    ],
    ['a bind that is none', { log: { diameter: 20, bindFound: 'sideways' } }, 'log.bindFound'],
  ])('[CL40] refuses %s', (_what, more, said) => {
    const path = fileWith(JSON.stringify({ format: 'kerfbook-cut/1', name: 'Cut', ...more }))
    expect(refusedWith(1, 'cut', path)).toContain(said)
  })
})
