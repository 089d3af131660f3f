import { describe, expect, test } from 'vitest';
import { gaussian, type RandomSource, seededRandom } from '../../../src/drill/seeded-random.ts';
import type { CellGrid, Size } from '../../../src/screens/cell-grid.ts';
import { drillScreen } from '../../../src/screens/drill-screen.ts';
import { COLOUR_THEME } from '../../../src/screens/theme.ts';
import { groundRow, nearestMark } from './read-strip.ts';
import { APPROACH, MARKS, withLive } from './sample-live.ts';

const FRAME_S = 1 / 60;
const BRAKE_M = MARKS.find(({ kind }) => kind === 'brake')!.sM;
/** Spread evenly over when they begin between two frames, so that few show what many would. */
const APPROACHES = 50;
/** Of a practised movement to a moment that can be foreseen. */
const TIMING_NOISE_S = 0.03;
/** What is seen later than this before the press changes nothing any more. */
const COMMIT_S = 0.15;
/** The last look back that the driver's idea of speed comes from. */
const MEMORY_FRAMES = 30;

interface Seen {
  readonly atS: number;
  readonly cells: number;
}

/** When the mark will be at the bar, from a straight line through what was seen; null before there is enough of it. */
function foreseenS(seen: readonly Seen[]): number | null {
  const last = seen.slice(-MEMORY_FRAMES);
  if (last.length < 5) return null;
  const meanS = last.reduce((sum, { atS }) => sum + atS, 0) / last.length;
  const mean = last.reduce((sum, { cells }) => sum + cells, 0) / last.length;
  const covariance = last.reduce((sum, { atS, cells }) => sum + (atS - meanS) * (cells - mean), 0);
  const variance = last.reduce((sum, { atS }) => sum + (atS - meanS) ** 2, 0);
  const rate = covariance / variance;
  return rate < 0 ? meanS - mean / rate : null;
}

/** A driver who knows nothing but the cells: watches the brake mark close on the bar and presses as it gets there. */
function pressS(frameAt: (frame: number) => CellGrid, random: RandomSource): number | null {
  const seen: Seen[] = [];
  const ground = groundRow(frameAt(0));
  for (let frame = 0; frame < 240; frame++) {
    const cells = nearestMark(frameAt(frame), ground);
    if (cells !== null) seen.push({ atS: frame * FRAME_S, cells });
    const at = foreseenS(seen);
    if (at !== null && at - frame * FRAME_S < COMMIT_S)
      return at + TIMING_NOISE_S * gaussian(random);
  }
  return null;
}

/** Seconds after the brake point at which the driver pressed, over many approaches that begin between two frames. */
function misses(speedMps: number, size: Size, unicode: boolean): readonly number[] {
  const random = seededRandom(20261125, speedMps);
  return Array.from({ length: APPROACHES }, (_, i) => {
    const leadS = 1 + ((i + random()) / APPROACHES) * FRAME_S;
    const fromM = BRAKE_M - leadS * speedMps;
    const frameAt = (frame: number): CellGrid => {
      const live = { ...APPROACH, speedMps, placeM: fromM + frame * FRAME_S * speedMps };
      return drillScreen(withLive(live, { phase: 'cue' }), size, { theme: COLOUR_THEME, unicode });
    };
    return pressS(frameAt, random)! - leadS;
  });
}

const SPEEDS_MPS = [22, 45, 68, 90];
const SMALL: Size = { cols: 80, rows: 24 };

describe('a driver who reads only the drawn cells', () => {
  test.each([
    ...SPEEDS_MPS.map((speedMps) => ({ speedMps, size: SMALL, unicode: true })),
    { speedMps: 68, size: SMALL, unicode: false },
    { speedMps: 68, size: { cols: 160, rows: 48 }, unicode: true },
  ])(
    'brakes within 50 ms at $speedMps m/s, $size.cols columns, unicode $unicode',
    { timeout: 60_000 },
    ({ speedMps, size, unicode }) => {
      const errors = misses(speedMps, size, unicode);
      const mean = errors.reduce((sum, each) => sum + each, 0) / errors.length;
      const spread = Math.sqrt(
        errors.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (errors.length - 1),
      );
      expect(spread).toBeLessThan(0.05);
      expect(Math.abs(mean)).toBeLessThan(0.01);
    },
  );

  test('has nothing to go by on a hidden rep', () => {
    const frameAt = (frame: number): CellGrid => {
      const live = { ...APPROACH, placeM: BRAKE_M + (frame * FRAME_S - 1) * APPROACH.speedMps };
      const view = withLive(live, { phase: 'cue', feedback: 'hidden' });
      return drillScreen(view, SMALL, { theme: COLOUR_THEME, unicode: true });
    };
    expect(pressS(frameAt, seededRandom(1))).toBeNull();
  });
});
