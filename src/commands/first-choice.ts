import type { PickerItem } from '../screens/picker-screen.ts';
import type { Choice } from './choices.ts';

/**
 * Where the list opens: at what was practised last; for a driver who has never practised at the target that takes the
 * least force, or at the first corner where there are no targets.
 */
export function firstChoice(choices: readonly Choice[], items: readonly PickerItem[]): number {
  const best = (rank: (place: number) => number | null): number | null =>
    choices.reduce<number | null>((found, _, place) => {
      const own = rank(place);
      const before = found === null ? null : rank(found);
      return own !== null && (before === null || own < before) ? place : found;
    }, null);
  const peakOf = (place: number): number | null => {
    const choice = choices[place]!;
    return choice.kind === 'target' ? choice.target.peakLevel : null;
  };
  return best((place) => items[place]!.daysSince) ?? best(peakOf) ?? 0;
}
