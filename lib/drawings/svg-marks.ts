import { element, escaped } from './svg-text.ts'

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
