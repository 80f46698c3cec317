import type { BrowserContextOptions } from 'playwright-core'

/** A way in which somebody may look at a page. */
export type Look = readonly [name: string, options: BrowserContextOptions]

const DESK = { viewport: { width: 1280, height: 900 } }

/** The two widths at which every state of every page is looked at. */
const WIDTHS: readonly Look[] = [
  ['390 px', { viewport: { width: 390, height: 844 } }],
  ['1280 px', DESK],
]

/** Further looks, for a state of a page that stands for the others; every state has them in the long run. */
const FURTHER: readonly Look[] = [
  ['1280 px in the dark', { ...DESK, colorScheme: 'dark' }],
  ['1280 px in forced colours', { ...DESK, forcedColors: 'active' }],
  ['1280 px at 400 %', { viewport: { width: 320, height: 256 } }],
]

/** The looks at a state of a page. */
export function looksAt(standsForOthers: boolean): readonly Look[] {
  return standsForOthers || process.env['KERFBOOK_LONG'] === '1' ? [...WIDTHS, ...FURTHER] : WIDTHS
}
