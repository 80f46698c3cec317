/** An attribute of an element of a drawing; lengths are written to a thousandth of a unit. */
export type Attributes = Readonly<Record<string, string | number>>

/** One element of an SVG drawing as text, its attributes escaped; `inside` stands as it is. */
export function element(name: string, attributes: Attributes, inside = ''): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${attribute(value)}"`)
  return inside === '' ? `<${name}${written.join('')}/>` : `<${name}${written.join('')}>${inside}</${name}>`
}

/** Text inside an element, escaped. */
export function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}

/** A length as it is written: a thousandth of a unit is far less than a sixteenth of an inch. */
export function length(value: number): string {
  const written = String(Math.round(value * 1000) / 1000)
  return written === '-0' ? '0' : written
}

function attribute(value: string | number): string {
  return typeof value === 'number' ? length(value) : escaped(value).replaceAll('"', '&quot;')
}
