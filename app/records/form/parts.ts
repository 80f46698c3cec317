/** One of a list that a form offers. */
export type Option = { value: string; label: string }

/** What is on record and may be named in a form, by what it is. */
export type ChoiceList =
  | 'people'
  | 'places'
  | 'units'
  | 'organisations'
  | 'books'
  | 'levels'
  | 'subjects'
  | 'items'
  | 'hitches'
  | 'cards'
  | 'cardNumbers'
  | 'words'

/** The lists themselves, by name. */
export type Choices = Readonly<Record<ChoiceList, readonly { id: string; name: string }[]>>

type Typed =
  | { kind: 'text' | 'long-text' | 'inches' | 'number' | 'degrees' | 'yes-no' }
  /** A day; where `isLast` says so, a month alone means its last day. */
  | { kind: 'day'; isLast?: true }
  /** One of a list that opens; the empty choice says `none`. Where what is chosen has parts, each is a field of its own. */
  | { kind: 'one'; of: readonly Option[] | ChoiceList; none?: string; parts?: readonly string[] }
  /** Any of a few; `instead` is what may be chosen in place of all of them. */
  | { kind: 'some'; of: readonly Option[]; instead?: Option }
  /** Written by name or id. */
  | { kind: 'named'; of: ChoiceList }
  /** One on each line; where `of` says what they are, by name or id. */
  | { kind: 'lines'; of?: ChoiceList }

/** One thing to type: where it stands in the record (inside a group, where in the group), its label and a hint; `rows` is how high a long text stands. */
export type Leaf = { path: string; label: string; hint?: string; rows?: number } & Typed

/** Things that belong together; left out of the record where nothing of them is typed. */
export type Group = { kind: 'group'; path: string; label: string; hint?: string; leaves: readonly Leaf[] }

/** Things of which there may be several: those on record, and some more to fill in. */
export type Rows = {
  kind: 'rows'
  path: string
  label: string
  hint?: string
  leaves: readonly Leaf[]
  spare: number
  /** Restrictions say different things by their kind and are typed as one text. */
  are?: 'restrictions'
}

/** One of several ways, each with its own things to type; only those of the way that is chosen count. */
export type OneOf = {
  kind: 'one-of'
  path: string
  label: string
  hint?: string
  ways: readonly { value: string; label: string; leaves: readonly Leaf[] }[]
}

export type Part = Leaf | Group | Rows | OneOf

/** What a form of a record asks, in the order in which it stands. */
export type FormParts = readonly Part[]

/** Whether a part is one thing to type. */
export function isLeaf(part: Part): part is Leaf {
  return part.kind !== 'group' && part.kind !== 'rows' && part.kind !== 'one-of'
}

/** The name of a field in a form: where it stands in the input of its use case. */
export function fieldName(...parts: readonly (string | number)[]): string {
  return parts.join('.')
}

/** How many rows a form draws: those that have something in them, and the spare ones. */
export function rowCount(
  values: Readonly<Record<string, string>>,
  prefix: string,
  { path, spare }: Rows,
): number {
  const start = `${prefix}.${path}.`
  const filled = Object.keys(values).flatMap((name) =>
    name.startsWith(start) && values[name] !== '' && !name.endsWith('.id')
      ? [Number(name.slice(start.length).split('.')[0]) + 1]
      : [],
  )
  return Math.max(0, ...filled) + spare
}

/** What a form offers in place of a list by its name: the options themselves. */
export function withOptions(parts: FormParts, choices: Choices): FormParts {
  const all = (leaves: readonly Leaf[]) => leaves.map((leaf) => leafWithOptions(leaf, choices))
  return parts.map((part): Part => {
    if (isLeaf(part)) return leafWithOptions(part, choices)
    if (part.kind !== 'one-of') return { ...part, leaves: all(part.leaves) }
    return { ...part, ways: part.ways.map((way) => ({ ...way, leaves: all(way.leaves) })) }
  })
}

function leafWithOptions(leaf: Leaf, choices: Choices): Leaf {
  if (leaf.kind !== 'one' || typeof leaf.of !== 'string') return leaf
  return { ...leaf, of: choices[leaf.of].map(({ id, name }) => ({ value: id, label: name })) }
}
