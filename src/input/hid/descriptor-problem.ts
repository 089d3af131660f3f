import { Problem } from '../../problem.ts';

/** A report descriptor that cannot be interpreted. `at` is the byte where it went wrong, null for the whole. */
export function descriptorProblem(what: string, at: number | null): Problem {
  return new Problem(what, {
    where: at === null ? 'report descriptor' : `report descriptor, byte ${at}`,
    next: 'Check that it is one complete descriptor; a device without a sound one can be set up by moving its controls.',
  });
}
