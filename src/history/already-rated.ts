import { Problem } from '../problem.ts';

/** What the driver said about a rep before its result is never said again after it. */
export function alreadyRated(repId: number, where: string): Problem {
  return new Problem(`rep ${repId} already has the driver's own rating`, {
    where,
    next: 'Leave it: what was felt before the result is never rewritten.',
  });
}
