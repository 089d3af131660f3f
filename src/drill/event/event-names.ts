import type { BrokenRule } from '../../profile/broken-rule.ts';
import type { ProfilePath } from '../../profile/profile-text.ts';
import type { KnownProfiles } from '../plan/plan-names.ts';
import { unknownName } from '../plan/unknown-name.ts';
import type { EventFile } from './event-file.ts';

/** Names of the event that stand for nothing; a session's variant has to be there in every sheet that it drives. */
export function unknownEventNames(file: EventFile, known: KnownProfiles): readonly BrokenRule[] {
  const corners = [...known.corners.keys()];
  return [
    ...unknownName('car', file.car, ['car'], known.cars),
    ...file.zones.flatMap(({ corner, car, variant }, i) => [
      ...unknownName('corner', corner, ['zones', i, 'corner'], corners),
      ...unknownName('car', car, ['zones', i, 'car'], known.cars),
      ...unknownVariant(corner, variant, ['zones', i, 'variant'], known),
    ]),
    ...file.sessions.flatMap(({ variant }, i) =>
      file.zones
        .filter((zone) => zone.variant === undefined)
        .flatMap(({ corner }) =>
          unknownVariant(corner, variant, ['sessions', i, 'variant'], known, ` of ${corner}`),
        ),
    ),
  ];
}

function unknownVariant(
  corner: string,
  variant: string | undefined,
  path: ProfilePath,
  { corners }: KnownProfiles,
  where = '',
): readonly BrokenRule[] {
  const variants = corners.get(corner);
  if (variants === undefined) return [];
  return unknownName(`variant${where}`, variant, path, variants);
}
