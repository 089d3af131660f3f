import type { BrokenRule } from '../../profile/broken-rule.ts';
import { nearest } from '../../profile/nearest.ts';
import { shown } from '../../profile/printable.ts';
import type { ProfilePath } from '../../profile/profile-text.ts';
import type { LiveZoneFile, PlanFile, ZoneFile } from './plan-file.ts';

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
    ...unknown('target', zone.target, [...path, 'target'], known.targets),
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
    ...unknown('corner', corner, [...path, 'corner'], [...corners.keys()]),
    ...unknown('car', car, [...path, 'car'], cars),
    ...(variants === undefined ? [] : unknown('variant', variant, [...path, 'variant'], variants)),
  ];
}

function unknown(
  noun: string,
  name: string | undefined,
  path: ProfilePath,
  known: readonly string[],
): BrokenRule[] {
  if (name === undefined || isPath(name) || known.includes(name)) return [];
  const close = nearest(name, known);
  const next = `${close === null ? '' : `Did you mean ${close}? `}Known are ${known.join(', ')}.`;
  return [{ path, what: `there is no ${noun} ${shown(name)}`, next }];
}

function isPath(name: string): boolean {
  return /[/\\]|\.ya?ml$/i.test(name);
}
