import type { BrokenRule } from '../../profile/broken-rule.ts';
import { nearest } from '../../profile/nearest.ts';
import { shown } from '../../profile/printable.ts';
import type { ProfilePath } from '../../profile/profile-text.ts';

/** A name that stands for nothing, with the nearest that does; empty for a known one, none, and the path of a file. */
export function unknownName(
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
