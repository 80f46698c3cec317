/** Counts by two categories of a scale, row by row; for a scale of `size` categories it has `size` × `size` cells. */
export type Square = { size: number; cells: readonly number[] }

/** Counts of nothing yet. */
export function emptyCells(size: number): number[] {
  return Array.from({ length: size * size }, () => 0)
}

/** One cell of a square. */
export function cellAt({ size, cells }: Square, row: number, column: number): number {
  return cells[row * size + column] ?? 0
}

/** The sum of all cells. */
export function totalOf({ cells }: Square): number {
  return cells.reduce((sum, cell) => sum + cell, 0)
}

/** The sums of the rows. */
export function rowSums(square: Square): number[] {
  return categories(square).map((row) =>
    categories(square).reduce((sum, at) => sum + cellAt(square, row, at), 0),
  )
}

/** The sums of the columns. */
export function columnSums(square: Square): number[] {
  return categories(square).map((column) =>
    categories(square).reduce((sum, at) => sum + cellAt(square, at, column), 0),
  )
}

/** The places of a scale's categories: 0, 1, 2 … */
export function categories({ size }: Pick<Square, 'size'>): number[] {
  return Array.from({ length: size }, (_, at) => at)
}
