import type { BlockGrid } from './block-grid.ts';
import type { PracticeSpread } from './spread-curve.ts';

/** Of what is written below and of how a curve is worked out: a text of another format is worked out again. */
const FORMAT = 1;

/** A spread curve as it is kept, with the reps that it is of. */
interface KeptSpread {
  readonly format: number;
  readonly repIds: readonly number[];
  readonly curve: {
    readonly day: string;
    readonly reps: number;
    readonly spread: readonly number[];
    readonly placesM: readonly number[] | null;
    readonly grid: Omit<BlockGrid, 'target' | 'corridor'> & {
      readonly target: readonly number[];
      readonly corridor: readonly number[];
    };
  };
}

/** The curve as text, number for number. */
export function keptSpreadText(curve: PracticeSpread, repIds: readonly number[]): string {
  const { grid, spread, placesM } = curve;
  const kept: KeptSpread = {
    format: FORMAT,
    repIds,
    curve: {
      ...curve,
      spread: [...spread],
      placesM: placesM && [...placesM],
      grid: { ...grid, target: [...grid.target], corridor: [...grid.corridor] },
    },
  };
  return JSON.stringify(kept);
}

/** The curve of just these reps; null where the text is of others, of another format or damaged. */
export function keptSpread(text: string, repIds: readonly number[]): PracticeSpread | null {
  const kept = parsed(text);
  if (kept?.format !== FORMAT || kept.repIds.join() !== repIds.join()) return null;
  const { grid, spread, placesM, ...curve } = kept.curve;
  return {
    ...curve,
    spread: Float64Array.from(spread),
    placesM: placesM && Float64Array.from(placesM),
    grid: {
      ...grid,
      target: Float64Array.from(grid.target),
      corridor: Float64Array.from(grid.corridor),
    },
  };
}

function parsed(text: string): KeptSpread | null {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
