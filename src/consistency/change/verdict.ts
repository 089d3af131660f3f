/** What may be said of a change. */
export type Verdict = 'improving' | 'no clear change' | 'worsening';

/**
 * A change is named only where its whole interval lies on one side.
 *
 * @param interval of the change of something that is better the smaller it is
 * @param none the value that stands for no change: 0 of a difference, 1 of a ratio
 */
export function verdict(
  { low, high }: { readonly low: number; readonly high: number },
  none: number,
): Verdict {
  if (high < none) return 'improving';
  return low > none ? 'worsening' : 'no clear change';
}
