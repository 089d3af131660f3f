import { apexM } from '../corner/apex.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import { distanceText } from '../unit-text.ts';
import type { CommandContext } from './command.ts';
import type { CornerLetter } from './corner-letters.ts';

/** The places of a car's target in a corner. */
export function drivenLetters({ zone, keys }: DerivedTarget): readonly CornerLetter[] {
  return [
    { letter: 'b', name: 'brake point', sM: zone.brakePointM, isTargets: true },
    { letter: 'r', name: 'start of release', sM: keys.startOfRelease.sM, isTargets: true },
    ...zone.downshifts.map(({ fromGear, toGear, atM }) => ({
      letter: 'd',
      name: `downshift, ${fromGear} to ${toGear}`,
      sM: atM,
      isTargets: true,
    })),
  ];
}

/** Whose places these are, and where the car is slowest. */
export function closingWords(driven: DerivedTarget | null, units: CommandContext['units']): string {
  if (driven === null)
    return 'Slowest by radius alone; car, slope and bank may move it (`--car`, `target derive`).';
  const { car, corner, zone } = driven;
  const behindM = zone.slowestM - apexM(corner.path);
  const where =
    Math.abs(behindM) < 0.5
      ? 'at the apex'
      : `${distanceText(Math.abs(behindM), units, 1)} ${behindM > 0 ? 'after' : 'before'} the apex`;
  return `Brake point, start of release and downshifts of the ${car.name}, slowest ${where}; \`target derive\` has its numbers and what they leave out.`;
}
