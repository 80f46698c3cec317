import type { Version } from './versions.schema.ts'

/** Whether a version was current as known at entry `n`: recorded by then and not superseded by then. */
export function isKnownAt(version: Version, n: number): boolean {
  return version.recordedIn <= n && (version.supersededIn === undefined || version.supersededIn > n)
}
