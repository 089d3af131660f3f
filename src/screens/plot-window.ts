import type { Target } from '../target/target.ts';
import type { Track } from '../trace/track.ts';
import { remembered } from './remembered.ts';

/** The part of time and level that a plot shows; the bottom is level 0. */
export interface PlotWindow {
  /** Seconds after the start of the target's rise. */
  readonly fromS: number;
  readonly toS: number;
  readonly topLevel: number;
}

/** Full scale of the picture is 110 % of the target's peak, so that the same error looks the same on every target. */
const HEADROOM = 1.1;
const BEFORE_S = 0.3;
/** At least 1.2 s of target stand ahead of the now line until the brake is off (preview, van der El 2018). */
const PREVIEW_S = 1.25;

/** The whole target, or its lower part `zoom` times taller; it stands still while the now line crosses it. */
export const targetWindow: (target: Target, zoom?: number) => PlotWindow = remembered(
  ({ marks, peakLevel }: Target, zoom = 1) => ({
    fromS: marks.rise - BEFORE_S,
    toS: marks.brakeOff + PREVIEW_S,
    topLevel: (HEADROOM * peakLevel) / zoom,
  }),
);

/** For a rep without target: its own trace from before the onset to its end. */
export function ownWindow(own: Track): PlotWindow {
  const endS = own.timeS.at(-1) ?? 0;
  return { fromS: -BEFORE_S, toS: Math.max(PREVIEW_S, endS + BEFORE_S), topLevel: HEADROOM };
}

/** The final release alone, down to the brake off, tall enough for the corridor and a mistake as large. */
export const finalReleaseWindow: (target: Target) => PlotWindow = remembered((target: Target) => {
  const { finalRelease, brakeOff } = target.marks;
  const level = target.level.at(finalRelease);
  const corridor = target.corridorAt(finalRelease);
  return {
    fromS: finalRelease - 0.4,
    toS: brakeOff + 0.4,
    topLevel: Math.min(HEADROOM * target.peakLevel, level + 4 * corridor),
  };
});

/** True where a row of the plot is taller than the corridor at the final release. */
export const isTooCoarse: (target: Target, rows: number) => boolean = remembered(
  (target: Target, rows: number) =>
    targetWindow(target).topLevel / rows > 2 * target.corridorAt(target.marks.finalRelease),
);
