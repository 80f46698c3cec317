import type { CalendarDate } from '../calendar/dates.ts'
import { byText } from '../kernel/order.ts'
import type { Complexity, WorkKind } from '../rulebooks/words.ts'

/** A kind of work at one difficulty. */
export type Difficulty = { workKind: WorkKind; complexity: Complexity }

/** A candidate and how many logs or trees of which difficulty their level asks for. */
export type CandidateWants = { person: string; wants: readonly (Difficulty & { count: number })[] }

/** A log or tree to be shared out, and for how many candidates in turn it is. */
export type Piece = Difficulty & { item: string; places: number }

/** A log or tree given to a candidate on a day. */
export type Given = { person: string; item: string; day: CalendarDate }

/** Something a candidate should get and does not, and why. */
export type Missing = Difficulty & {
  person: string
  wanted: number
  got: number
  because: 'none-on-site' | 'may-not-train' | 'too-few'
}

/** What is to be shared out among whom. */
export type ToShare = {
  candidates: readonly CandidateWants[]
  pieces: readonly Piece[]
  /** The days on which somebody may be on an item in training or better; none: it is not for them. */
  daysFor: (person: string, item: string) => readonly CalendarDate[]
  /** What was shared out before, and stays. */
  held: readonly Given[]
}

/**
 * Shares logs and trees out by difficulty. Each candidate gets one before anybody gets a second, and as many as can
 * be had: nobody could get more but from somebody who has no more than they. Nobody gets an item on a day on which
 * they may not train on it, or the same item twice. Equal input gives equal output; where candidates are alike the
 * earlier in the list comes first.
 */
export function shareOut(asked: ToShare): { given: Given[]; missing: Missing[] } {
  const given = new GivenSoFar(asked)
  const missing: Missing[] = []
  for (const difficulty of difficultiesOf(asked)) {
    const pieces = asked.pieces.filter((piece) => isSame(piece, difficulty))
    const wanted = asked.candidates.flatMap(({ person, wants }) => {
      const count = wants
        .filter((want) => isSame(want, difficulty))
        .reduce((sum, want) => sum + want.count, 0)
      return count === 0 ? [] : [{ person, count }]
    })
    const matched = new Matched(asked, pieces)
    const most = Math.max(0, ...wanted.map(({ count }) => count))
    for (let round = 1; round <= most; round += 1)
      for (const { person, count } of wanted)
        if (count >= round && matched.countOf(person) < round) matched.giveOneMore(person)
    for (const { person, count } of wanted) {
      for (const item of matched.newItemsOf(person)) given.give(person, item)
      const got = matched.countOf(person)
      if (got >= count) continue
      const isForThem = pieces.some(({ item }) => asked.daysFor(person, item).length > 0)
      const because = pieces.length === 0 ? 'none-on-site' : isForThem ? 'too-few' : 'may-not-train'
      missing.push({ ...difficulty, person, wanted: count, got, because })
    }
  }
  return { given: given.all, missing }
}

function isSame(left: Difficulty, right: Difficulty): boolean {
  return left.workKind === right.workKind && left.complexity === right.complexity
}

/** Every difficulty that somebody wants, in the order in which it is first wanted. */
function difficultiesOf({ candidates }: ToShare): Difficulty[] {
  const found: Difficulty[] = []
  for (const { wants } of candidates)
    for (const { workKind, complexity, count } of wants) {
      const difficulty = { workKind, complexity }
      if (count > 0 && !found.some((known) => isSame(known, difficulty))) found.push(difficulty)
    }
  return found
}

/** Who has which items of one difficulty; one more is found along augmenting paths, which take nobody's count away. */
class Matched {
  /** By item: those who hold it anew. */
  private readonly holders: ReadonlyMap<string, Set<string>>
  private readonly free: ReadonlyMap<string, number>

  constructor(
    private readonly asked: ToShare,
    private readonly pieces: readonly Piece[],
  ) {
    this.holders = new Map(pieces.map(({ item }) => [item, new Set<string>()]))
    this.free = new Map(
      pieces.map(({ item, places }) => [
        item,
        places - new Set(asked.held.filter((share) => share.item === item).map(({ person }) => person)).size,
      ]),
    )
  }

  /** How many items somebody has, with those shared out before. */
  countOf(person: string): number {
    return this.pieces.filter(({ item }) => this.has(person, item)).length
  }

  newItemsOf(person: string): string[] {
    return this.pieces.filter(({ item }) => this.holdersOf(item).has(person)).map(({ item }) => item)
  }

  giveOneMore(person: string, tried = new Set<string>()): boolean {
    const open = this.pieces
      .filter(({ item }) => !this.has(person, item) && this.asked.daysFor(person, item).length > 0)
      .sort(
        (left, right) => this.usedOf(left.item) - this.usedOf(right.item) || byText(left.item, right.item),
      )
    for (const { item } of open) {
      if (tried.has(item)) continue
      tried.add(item)
      const holders = this.holdersOf(item)
      if (holders.size < (this.free.get(item) ?? 0)) {
        holders.add(person)
        return true
      }
      for (const holder of [...holders]) {
        if (!this.giveOneMore(holder, tried)) continue
        holders.delete(holder)
        holders.add(person)
        return true
      }
    }
    return false
  }

  private has(person: string, item: string): boolean {
    if (this.holdersOf(item).has(person)) return true
    return this.asked.held.some((share) => share.person === person && share.item === item)
  }

  private usedOf(item: string): number {
    return this.holdersOf(item).size
  }

  private holdersOf(item: string): Set<string> {
    return this.holders.get(item) ?? new Set()
  }
}

/** What is given, each on the day on which the person, then the item, has had least so far; the earliest of those. */
class GivenSoFar {
  readonly all: Given[] = []

  constructor(private readonly asked: ToShare) {}

  give(person: string, item: string): void {
    const [day] = [...this.asked.daysFor(person, item)].sort(
      (left, right) =>
        this.count((share) => share.person === person && share.day === left) -
          this.count((share) => share.person === person && share.day === right) ||
        this.count((share) => share.item === item && share.day === left) -
          this.count((share) => share.item === item && share.day === right) ||
        byText(left, right),
    )
    if (day !== undefined) this.all.push({ person, item, day })
  }

  private count(counts: (share: Given) => boolean): number {
    return [...this.asked.held, ...this.all].filter(counts).length
  }
}
