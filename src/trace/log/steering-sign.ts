import type { ProfileProblem } from '../../profile/profile-problem.ts';
import { LogRefused } from './log-settings.ts';
import type { Notices } from './notices.ts';

type Side = 'left' | 'right';

/**
 * Which way the steering of a log is positive, in the end: as the user or its unit says, else as the car was seen to
 * turn. Notes what was taken for granted.
 *
 * @returns null where nobody says it and nothing was seen
 * @throws LogRefused where the car was seen to turn the other way
 */
export function steeringSign(said: Side | null, seen: Side | null, notices: Notices): Side | null {
  if (said !== null && seen !== null && said !== seen)
    throw new LogRefused([contradicted(said, seen)]);
  if (said === null) notices.add(seen === null ? NO_SIGN : seenSign(seen), null);
  return said ?? seen;
}

const NO_SIGN =
  'steering is left out: its sign is not known. Say which way is positive with --steering-positive left or right';

function seenSign(seen: Side): string {
  return `steering is taken as positive to the ${seen}, by lateral acceleration or yaw rate (positive to the left)`;
}

function contradicted(said: Side, seen: Side): ProfileProblem {
  return {
    line: 1,
    column: 1,
    what: `steering is said to be positive to the ${said}, but the car turns as if it were to the ${seen}`,
    next: 'Check --steering-positive, or the sign of lateral acceleration and yaw rate.',
  };
}
