/** The middle of some numbers. */
export function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((left, right) => left - right)
  const middle = sorted.length >> 1
  const [low, high] = sorted.length % 2 === 1 ? [middle, middle] : [middle - 1, middle]
  return ((sorted[low] ?? Number.NaN) + (sorted[high] ?? Number.NaN)) / 2
}

/** Milliseconds that some work takes, on a heap that was cleaned before (with `--expose-gc`), and what it gave. */
export async function timed<Value>(
  work: () => Value | Promise<Value>,
): Promise<{ ms: number; value: Value }> {
  globalThis.gc?.()
  const from = performance.now()
  const value = await work()
  return { ms: performance.now() - from, value }
}

/** Three digits of a number, and no more than it has. */
export function figure(value: number): string {
  if (value >= 100) return String(Math.round(value))
  return String(Number(value.toPrecision(3)))
}

/** Prints one line of the bench: its name, then `key=value`; numbers with three digits. */
export function printLine(name: string, values: Record<string, string | number>): void {
  const said = Object.entries(values).map(
    ([key, value]) => `${key}=${typeof value === 'number' ? figure(value) : value}`,
  )
  console.log([name, ...said].join(' '))
}

/** Memory of this process in MiB. */
export function rssMiB(): number {
  return Math.round(process.memoryUsage.rss() / 2 ** 20)
}
