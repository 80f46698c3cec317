const LONGEST_COMPARED = 64

/**
 * The known name nearest to a mistyped one, or nothing where none is near. A letter left out, put in or replaced, or
 * two neighbours swapped, is one slip; at most a third of the letters typed (and at least one) may be slips. Of
 * equally near names the first stands. Capitals make no difference, and texts over 64 letters are not compared.
 */
export function nearestName(typed: string, known: readonly string[]): string | undefined {
  if (typed.length > LONGEST_COMPARED) return undefined
  const allowed = Math.max(1, Math.floor(typed.length / 3))
  const wanted = typed.toLowerCase()
  let best: string | undefined
  let fewest = allowed + 1
  for (const name of known) {
    if (Math.abs(name.length - typed.length) > allowed) continue
    const slips = slipsBetween(wanted, name.toLowerCase())
    if (slips < fewest) {
      best = name
      fewest = slips
    }
  }
  return best
}

/** The optimal string alignment distance: Levenshtein's, with a swap of neighbours counted once. */
function slipsBetween(left: string, right: string): number {
  let beforeLast: number[] = []
  let last = Array.from({ length: right.length + 1 }, (_, index) => index)
  for (let row = 1; row <= left.length; row += 1) {
    const current = [row]
    for (let column = 1; column <= right.length; column += 1) {
      const isSame = left[row - 1] === right[column - 1]
      const isSwap = row > 1 && left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1]
      current.push(
        Math.min(
          at(last, column - 1) + (isSame ? 0 : 1),
          at(last, column) + 1,
          at(current, column - 1) + 1,
          isSwap ? at(beforeLast, column - 2) + 1 : Infinity,
        ),
      )
    }
    beforeLast = last
    last = current
  }
  return at(last, right.length)
}

function at(row: readonly number[], column: number): number {
  return row[column] ?? Infinity
}
