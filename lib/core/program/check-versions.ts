import { stepsTo, type FactIndex, type PartLocated, type Placed } from './fact-index.ts'
import { writePath } from './paths.ts'
import type { ProblemList } from './problem-list.ts'
import { SECTION_NAMES, type SectionName } from './sections.ts'

/** How many versions a problem names at most. */
const MOST_NAMED = 20

/**
 * The times of knowing: entries that exist, nothing that ceases before it is known, of each id one version at a time,
 * and corrections that each close the one version they correct, in the entry in which they are recorded.
 */
export function checkVersions(index: FactIndex, problems: ProblemList): void {
  for (const section of SECTION_NAMES) {
    for (const located of index.withPartial(section)) checkNumbers(located, index.entries, problems)
    for (const [id, versions] of index.placedById(section)) {
      if (versions.length === 1 && versions[0]?.fact.supersedes === undefined) continue
      checkTimes(versions, problems)
      checkHeirs(id, versions, index, problems)
    }
  }
}

function checkNumbers(located: PartLocated<SectionName>, entries: number, problems: ProblemList): void {
  const { recordedIn, supersededIn } = located.fact
  for (const [field, n] of Object.entries({ recordedIn, supersededIn })) {
    if (n === undefined || n <= entries) continue
    const figures = {
      kind: 'no-such-entry',
      field: field as 'recordedIn' | 'supersededIn',
      n,
      entries,
    } as const
    problems.add([...stepsTo(located), field], n, figures)
  }
  if (recordedIn !== undefined && supersededIn !== undefined && supersededIn <= recordedIn) {
    const figures = { kind: 'superseded-too-early', recordedIn, supersededIn } as const
    problems.add([...stepsTo(located), 'supersededIn'], supersededIn, figures)
  }
}

function checkTimes(versions: readonly Placed[], problems: ProblemList): void {
  let open: Placed | undefined
  for (const version of versions) {
    const { id, recordedIn, supersedes } = version.fact
    if (open !== undefined && endOf(open) > recordedIn) {
      const other = writePath(stepsTo(open))
      if (open.fact.recordedIn === recordedIn) {
        problems.add(stepsTo(version), id, { kind: 'twin', id, recordedIn, other })
      } else if (supersedes !== open.fact.recordedIn) {
        // A version that its heir leaves open is told at the heir.
        problems.add(stepsTo(version), id, { kind: 'two-at-once', id, from: recordedIn, other })
      }
    }
    if (open === undefined || endOf(version) > endOf(open)) open = version
  }
}

function endOf(version: Placed): number {
  const { recordedIn, supersededIn } = version.fact
  // An end that did not read may lie in any later entry, so only the first after it became known is sure to be before.
  return supersededIn ?? (version.unread?.has('supersededIn') === true ? recordedIn + 1 : Infinity)
}

function checkHeirs(id: string, versions: readonly Placed[], index: FactIndex, problems: ProblemList): void {
  const byNumber = new Map(versions.map((version) => [version.fact.recordedIn, version]))
  const firstNumbers = [...byNumber.keys()].slice(0, MOST_NAMED + 1)
  const circles = inCircles(byNumber)
  const heirs = new Map<number, Placed>()
  for (const version of versions) {
    const { supersedes, recordedIn } = version.fact
    if (supersedes === undefined) continue
    const steps = [...stepsTo(version), 'supersedes']
    const corrected = byNumber.get(supersedes)
    if (corrected === undefined) {
      if (index.mayHideVersion(version.section, id)) continue
      const others = firstNumbers.filter((number) => number !== recordedIn).slice(0, MOST_NAMED)
      problems.add(steps, supersedes, { kind: 'supersedes-nothing', id, supersedes, versions: others })
      continue
    }
    const circle = circles.get(recordedIn)
    if (circle !== undefined) {
      if (circle[0] === recordedIn)
        problems.add(steps, supersedes, { kind: 'supersession-circle', id, entries: circle })
      continue
    }
    const first = heirs.get(supersedes)
    if (first !== undefined) {
      problems.add(steps, supersedes, { kind: 'two-heirs', id, supersedes, other: writePath(stepsTo(first)) })
      continue
    }
    heirs.set(supersedes, version)
    const { supersededIn } = corrected.fact
    if (supersededIn === recordedIn || corrected.unread?.has('supersededIn') === true) continue
    problems.add(steps, supersedes, {
      kind: 'heir-in-another-entry',
      id,
      recordedIn,
      ...(supersededIn === undefined ? {} : { supersededIn }),
      other: writePath(stepsTo(corrected)),
    })
  }
}

/** The circles among the versions of one id: for each number in one the numbers of its circle, from the least. */
function inCircles(byNumber: ReadonlyMap<number, Placed>): Map<number, number[]> {
  const circles = new Map<number, number[]>()
  const done = new Set<number>()
  for (const start of byNumber.keys()) {
    const walk: number[] = []
    const onWalk = new Set<number>()
    let number: number | undefined = start
    while (number !== undefined && byNumber.has(number) && !done.has(number) && !onWalk.has(number)) {
      walk.push(number)
      onWalk.add(number)
      number = byNumber.get(number)?.fact.supersedes
    }
    if (number !== undefined && onWalk.has(number)) {
      const circle = walk.slice(walk.indexOf(number)).sort((left, right) => left - right)
      for (const member of circle) circles.set(member, circle)
    }
    for (const member of walk) done.add(member)
  }
  return circles
}
