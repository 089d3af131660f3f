import { readTarget, targetOfKeys } from '../read-target.ts';
import type { Target } from '../target.ts';
import type { DerivedTarget } from './derive-target.ts';
import { targetFileOf, targetFileText } from './target-file-text.ts';

/**
 * The target over distance that the file of a derived zone says. The text is only written where it would be refused.
 *
 * @param advice of the coach, or null
 * @throws Problem that lists what is wrong with the file
 */
export function targetOfDerived(derived: DerivedTarget, advice: string | null, id: string): Target {
  return (
    targetOfKeys(targetFileOf(derived, advice), id) ??
    readTarget(targetFileText(derived, advice), `${id}.yaml`)
  );
}
