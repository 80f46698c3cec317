/** A figure that may have none: then why. */
export type Figure<Value = number> = { kind: 'value'; value: Value } | { kind: 'undefined'; why: Undefined }

/** No two scores of one cut and item; or every score the same, so that chance alone would agree as well. */
export type Undefined = 'no-pairs' | 'one-category'

/** Wraps a figure that there is. */
export function figure<Value>(value: Value): Figure<Value> {
  return { kind: 'value', value }
}

/** Wraps why there is none. */
export function undefinedFigure(why: Undefined): { kind: 'undefined'; why: Undefined } {
  return { kind: 'undefined', why }
}
