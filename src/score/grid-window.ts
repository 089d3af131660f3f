/** Points `from` to `to` of the scoring grid, both included. */
export interface GridWindow {
  readonly from: number;
  readonly to: number;
}

/** The window's part of a signal, sharing its memory. */
export function slice(signal: Float64Array, { from, to }: GridWindow): Float64Array {
  return signal.subarray(from, to + 1);
}
