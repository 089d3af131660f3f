import { apexesM, apexM } from '../corner/apex.ts';
import type { Corner } from '../corner/corner.ts';

/** A letter of the pictures and what it stands for. */
export interface CornerLetter {
  readonly letter: string;
  readonly name: string;
  /** Along the path from turn-in, m. */
  readonly sM: number;
  /** True for a place of a target, which stands beside what belongs to the road. */
  readonly isTargets?: boolean;
}

/**
 * The places that plan view and table name, in driving order.
 * @param driven of the target of a car in it, small letters as on the screens of the drill
 */
export function cornerLetters(
  corner: Corner,
  driven: readonly CornerLetter[] = [],
): readonly CornerLetter[] {
  const slowest = apexM(corner.path);
  const letters = [
    ...driven,
    ...corner.bumps.map(({ atM }) => ({ letter: 'o', name: 'bump', sM: atM })),
    { letter: 'T', name: 'turn-in', sM: 0 },
    ...apexesM(corner.path).map((sM) =>
      sM === slowest
        ? { letter: 'S', name: 'apex, slowest by its radius', sM }
        : { letter: 'A', name: 'apex', sM },
    ),
  ];
  return letters.toSorted((a, b) => a.sM - b.sM);
}
