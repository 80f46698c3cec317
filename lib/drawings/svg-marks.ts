import { element, escaped } from './svg-text.ts'

const STYLE = [
  'text{font:14px sans-serif;fill:#111;fill:var(--ink,#111)}',
  '.wood{fill:#ecdcb9;fill:var(--wood,#ecdcb9);stroke:#111;stroke:var(--ink,#111);stroke-width:2}',
  '.hinge{fill:#111;fill:var(--ink,#111)}',
  '.cut{stroke:#111;stroke:var(--ink,#111);stroke-width:2;fill:none}',
  '.measure{stroke:#111;stroke:var(--ink,#111);stroke-width:1;fill:none}',
  '.kerf{stroke:#111;stroke:var(--ink,#111);stroke-width:4;fill:none}',
  '.gone{stroke:#555;stroke:var(--ink-soft,#555);stroke-width:1.5;stroke-dasharray:2 4;fill:none}',
  '.allowed{fill:#7a4a12;fill:var(--tolerance,#7a4a12);fill-opacity:.22}',
  '.edge{stroke:#7a4a12;stroke:var(--tolerance,#7a4a12);stroke-width:1.5;stroke-dasharray:7 4;fill:none}',
  '.paper{fill:#fff;fill:var(--paper,#fff)}',
].join('')

const ARROW = element(
  'marker',
  {
    ...{ id: 'arrow', viewBox: '0 0 10 10', refX: 9, refY: 5 },
    ...{ markerWidth: 6, markerHeight: 6, orient: 'auto' },
  },
  element('path', { class: 'hinge', d: 'M0 1L10 5L0 9Z' }),
)

const BARS = [50, 20, 10, 5, 2, 1] as const

/** What a drawing is called, how large it is, and how many units an inch takes. */
export type Sheet = {
  name: string
  width: number
  height: number
  scale: number
  title: string
  desc: string
}

/** A whole drawing as an SVG document: named for whoever does not see it, on paper of its own. */
export function drawing(
  { name, width, height, scale, title, desc }: Sheet,
  inside: readonly string[],
): string {
  const parts = [
    element('title', { id: `${name}-title` }, escaped(title)),
    element('desc', { id: `${name}-desc` }, escaped(desc)),
    element('style', {}, STYLE),
    ARROW,
    element('rect', { class: 'paper', width, height }),
    ...inside.filter((part) => part !== ''),
  ]
  return `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${Math.ceil(width)} ${Math.ceil(height)}`,
      role: 'img',
      'aria-labelledby': `${name}-title ${name}-desc`,
      'data-scale': String(scale),
    },
    `\n${parts.join('\n')}\n`,
  )}\n`
}

/** A bar of whole inches, at most half as long as the wood is wide. */
export function scaleBar(
  [x, y]: readonly [number, number],
  scale: number,
  diameter: number,
  words: (count: number) => string,
): string[] {
  const bar = BARS.find((inches) => inches <= diameter / 2) ?? 1
  const end = x + bar * scale
  return [
    line([x, y], [end, y], 'cut', { 'data-part': 'scale' }),
    line([x, y - 5], [x, y + 5], 'cut'),
    line([end, y - 5], [end, y + 5], 'cut'),
    label(end + 10, y + 5, words(bar)),
  ]
}

/** A line of a drawing from one point to another. */
export function line(
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  name: string,
  more: Readonly<Record<string, string>> = {},
): string {
  return element('line', { class: name, ...more, x1, y1, x2, y2 })
}

/** A word on a drawing; nothing where there is none. */
export function label(
  x: number,
  y: number,
  text: string | undefined,
  anchor: 'start' | 'middle' | 'end' = 'start',
): string {
  return text === undefined ? '' : element('text', { x, y, 'text-anchor': anchor }, escaped(text))
}
