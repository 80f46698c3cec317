/** The attributes of the elements that carry an attribute with a value, read from the text of a drawing. */
export function elements(svg: string, key: string, value: string): Readonly<Record<string, string>>[] {
  return [...svg.matchAll(/<[a-z]+((?: [\w:-]+="[^"]*")+)\/?>/gi)]
    .map(([, attributes = '']) =>
      Object.fromEntries(
        [...attributes.matchAll(/ ([\w:-]+)="([^"]*)"/g)].map(([, name = '', text = '']) => [name, text]),
      ),
    )
    .filter((attributes) => attributes[key] === value)
}

/** The one part of a drawing with a name. */
export function part(svg: string, name: string): Readonly<Record<string, string>> {
  const [only, other] = elements(svg, 'data-part', name)
  if (only === undefined || other !== undefined) throw new Error(`not one ${name}`)
  return only
}

/** A number of an element. */
export const at = (of: Readonly<Record<string, string>>, key: string) => Number(of[key])

/** The corners of a polygon. */
export const points = (of: Readonly<Record<string, string>>) =>
  (of['points'] ?? '').split(' ').map((pair) => pair.split(',').map(Number))
