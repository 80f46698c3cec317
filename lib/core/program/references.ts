import { nearestName } from '../kernel/nearest-name.ts'
import type { FactIndex } from './fact-index.ts'
import type { PathStep } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import type { ReferenceTo } from './problems.ts'
import type { SectionName } from './sections.ts'

/** How many comparisons of names one file may cost, so that many wrong references stay cheap. */
const MOST_COMPARISONS = 200_000

/** The sections in which an id of a kind may stand. */
const SECTIONS = {
  books: ['books'],
  editions: ['editions'],
  organisations: ['organisations'],
  places: ['places'],
  people: ['people'],
  cards: ['cards'],
  suspensions: ['suspensions'],
  items: ['items', 'expectedWork'],
  cautions: ['cautions'],
  hitches: ['hitches'],
} as const satisfies Partial<Record<ReferenceTo, readonly SectionName[]>>

type ToSection = keyof typeof SECTIONS

/** The names of something, each with the entry in which it is first known. */
export type FirstKnown = ReadonlyMap<string, number>

/** Looks up what references lead to, and tells of those that lead to nothing or to something known only later. */
export class References {
  private readonly firstKnown = new Map<ToSection, Map<string, number>>()
  private comparisons = 0

  constructor(
    private readonly index: FactIndex,
    private readonly problems: ProblemList,
  ) {}

  /** Whether an id is known by the entry; a problem is added where it is not. */
  check(steps: readonly PathStep[], to: ToSection, id: string, recordedIn: number): boolean {
    if (SECTIONS[to].some((section) => this.index.isUnreadable(section, id))) return false
    return this.checkIn(steps, to, this.known(to), id, recordedIn)
  }

  /** The same for names that are no ids of a section. */
  checkIn(
    steps: readonly PathStep[],
    to: ReferenceTo,
    known: FirstKnown,
    id: string,
    recordedIn: number,
  ): boolean {
    const knownFrom = known.get(id)
    if (knownFrom === undefined) {
      const nearest = this.nearest(id, known)
      this.problems.add(steps, id, {
        kind: 'refers-to-nothing',
        to,
        id,
        ...(nearest === undefined ? {} : { nearest }),
      })
      return false
    }
    if (knownFrom <= recordedIn) return true
    this.problems.add(steps, id, { kind: 'refers-to-later', to, id, recordedIn, knownFrom })
    return false
  }

  private known(to: ToSection): FirstKnown {
    const before = this.firstKnown.get(to)
    if (before !== undefined) return before
    const known = new Map<string, number>()
    for (const section of SECTIONS[to]) {
      for (const [id, versions] of this.index.byId(section)) known.set(id, versions[0]?.fact.recordedIn ?? 0)
    }
    this.firstKnown.set(to, known)
    return known
  }

  private nearest(id: string, known: FirstKnown): string | undefined {
    if (this.problems.isFull || this.comparisons > MOST_COMPARISONS) return undefined
    const near: string[] = []
    for (const name of known.keys()) {
      if (Math.abs(name.length - id.length) <= Math.max(1, id.length / 3)) near.push(name)
    }
    this.comparisons += near.length
    return nearestName(id, near)
  }
}
