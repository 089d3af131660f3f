import type { BrokenRule } from '../../profile/broken-rule.ts';
import type { ProfilePath } from '../../profile/profile-text.ts';
import type { LiveZoneFile, PlanFile, ZoneFile } from './plan-file.ts';
import { unknownName } from './unknown-name.ts';

/** What can be named by id, so that a plan's names can be checked before it is driven. */
export interface KnownProfiles {
  readonly targets: readonly string[];
  readonly cars: readonly string[];
  /** Corner sheets with the names of their variants. */
  readonly corners: ReadonlyMap<string, readonly string[]>;
}

/** Names of the plan that stand for nothing. Paths of files are not looked at. */
export function unknownNames(file: PlanFile, known: KnownProfiles): readonly BrokenRule[] {
  const of = (zones: readonly ZoneFile[], path: ProfilePath): BrokenRule[] =>
    zones.flatMap((zone, i) => zoneNames(zone, [...path, i], known));
  return [
    ...of(file.zones, ['zones']),
    ...of(file.carry_over?.zones ?? [], ['carry_over', 'zones']),
  ];
}

function zoneNames(zone: ZoneFile, path: ProfilePath, known: KnownProfiles): BrokenRule[] {
  return [
    ...unknownName('target', zone.target, [...path, 'target'], known.targets),
    ...liveNames(zone, path, known),
    ...liveNames(zone.live ?? {}, [...path, 'live'], known),
  ];
}

function liveNames(
  { corner, car, variant }: Partial<LiveZoneFile>,
  path: ProfilePath,
  { cars, corners }: KnownProfiles,
): BrokenRule[] {
  const variants = corner === undefined ? undefined : corners.get(corner);
  return [
    ...unknownName('corner', corner, [...path, 'corner'], [...corners.keys()]),
    ...unknownName('car', car, [...path, 'car'], cars),
    ...(variants === undefined
      ? []
      : unknownName('variant', variant, [...path, 'variant'], variants)),
  ];
}
