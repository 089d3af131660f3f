import type { PlaceTrack } from '../../live/live-view.ts';

/** Value of a quantity at a place of the road, straight between its entries and constant beyond them. */
export function valueAt({ placeM, value }: PlaceTrack, sM: number): number {
  let low = 0;
  for (let high = placeM.length; low < high; ) {
    const middle = (low + high) >> 1;
    if (placeM[middle]! < sM) low = middle + 1;
    else high = middle;
  }
  if (low === 0 || low === placeM.length) return value[Math.max(0, low - 1)] ?? 0;
  const [from, to] = [placeM[low - 1]!, placeM[low]!];
  const share = to > from ? (sM - from) / (to - from) : 1;
  return value[low - 1]! + share * (value[low]! - value[low - 1]!);
}
