import { fingerprint } from '../../profile/fingerprint.ts';
import type { Target } from '../../target/target.ts';

const PACED = '/paced';

/**
 * The target under which reps that are paced by the steering are kept: the same curve, and an id and a version of its
 * own, because what it asks for follows the driver's wheel and compares with nothing that follows the clock.
 */
export function pacedIdentity(target: Target): Target {
  const version = fingerprint(JSON.stringify([1, 'paced', target.version]));
  return { ...target, id: `${target.id}${PACED}`, version };
}
