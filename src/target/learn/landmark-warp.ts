/**
 * The map from common time to a rep's own time that takes each common landmark to the rep's: straight lines between
 * landmarks, the own pace before the first and after the last. It rises wherever both lists do, so no moment of a rep
 * is left out, repeated or passed twice (landmark registration: Ramsay and Silverman, Functional Data Analysis, 2nd
 * ed., chapter 7). A warping that follows the levels themselves would take away the very errors that are trained.
 *
 * @param commonS,ownS landmark times of equal number, both strictly ascending, seconds
 * @throws RangeError for lists that do not ascend or are of different lengths
 */
export function landmarkWarp(
  commonS: readonly number[],
  ownS: readonly number[],
): (timeS: number) => number {
  if (commonS.length === 0 || commonS.length !== ownS.length || !ascends(commonS) || !ascends(ownS))
    throw new RangeError('landmarks have to ascend and to be as many');
  const last = commonS.length - 1;
  return (timeS) => {
    if (timeS <= commonS[0]!) return ownS[0]! + timeS - commonS[0]!;
    if (timeS >= commonS[last]!) return ownS[last]! + timeS - commonS[last]!;
    let i = 0;
    while (timeS >= commonS[i + 1]!) i++;
    const share = (timeS - commonS[i]!) / (commonS[i + 1]! - commonS[i]!);
    return ownS[i]! + share * (ownS[i + 1]! - ownS[i]!);
  };
}

function ascends(timesS: readonly number[]): boolean {
  return timesS.every((timeS, i) => i === 0 || timeS > timesS[i - 1]!);
}
