import { type BrakingShape, braking, type Curve, FALLS, minJerk, SHAPE } from './curves.ts';

/**
 * The reps behind test/reference/score-archetypes.json, in levels and in seconds after the start of the target's rise.
 * The mean level is the target's over the release window, the on/off level its mean up to the switch.
 */
export interface Crude {
  readonly meanLevel: number;
  readonly onOffLevel: number;
  readonly onOffSwitchS: number;
}

const MARK_S = 0.3;

export function archetypes(family: 'convex' | 'scurve', crude: Crude): Record<string, Curve> {
  const shape: BrakingShape = { ...SHAPE, fall: FALLS[family] };
  const target = braking(shape);
  const release = (change: Partial<BrakingShape>): Curve => braking({ ...shape, ...change });
  const scaled =
    (factor: number): Curve =>
    (t) =>
      factor * target(t);
  const after =
    (startS: number, then: Curve): Curve =>
    (t) =>
      before(t, startS) ? target(t) : then(t);
  const bumps =
    (height: number, width: number, ...centres: number[]): Curve =>
    (t) =>
      centres.reduce((level, c) => level + bump(t - c, height, width), target(t));
  return {
    'perfect copy': target,
    'release 100 ms late': release({ holdS: 0.25 }),
    'release 100 ms early': release({ holdS: 0.05 }),
    'release 20 % too fast': release({ releaseS: 1.2 }),
    'release 20 % too slow': release({ releaseS: 1.8 }),
    '10 % too light': scaled(0.9),
    '30 % too light': scaled(0.7),
    '15 % too hard': scaled(1.15),
    'slow hit (250 ms rise)': (t) => (before(t, MARK_S) ? 0.8 * minJerk(t / 0.25) : target(t)),
    '1 re-application of 8 %': bumps(0.08, 0.06, 1),
    '3 re-applications of 8 %': bumps(0.08, 0.06, 0.65, 0.95, 1.25),
    '1 re-application of 20 %': bumps(0.2, 0.08, 1),
    'staircase, 5 steps': after(MARK_S, (t) => 0.16 * Math.ceil(target(t) / 0.16)),
    'straight-line release': release({ fall: FALLS.straight }),
    'other curve family': release({ fall: FALLS[family === 'convex' ? 'scurve' : 'convex'] }),
    'G nothing': () => 0,
    'G rest foot at 5 %': () => 0.05,
    'G right hit + best on/off': after(MARK_S - 0.05, (t) =>
      before(t, crude.onOffSwitchS) ? crude.onOffLevel : 0,
    ),
    'G right hit, instant dump': after(MARK_S + 0.02, () => 0),
    'G hold for ever': after(MARK_S, () => 0.8),
    'G tap spike': (t) => bump(t - 0.1, 0.8, 0.03),
    'G constant at mean': (t) => (before(t, 0) ? 0 : crude.meanLevel),
    'G three-step approximation': after(MARK_S + 0.001, (t) =>
      before(t, 0.8) ? 0.6 : before(t, 1.3) ? 0.28 : 0.05,
    ),
  };
}

/** Earlier than an instant of the 1 kHz grid, whatever the last bit of the sum says. */
const before = (timeS: number, instantS: number): boolean => timeS < instantS - 1e-6;

const bump = (offsetS: number, height: number, widthS: number): number =>
  height * Math.exp(-((offsetS / widthS) ** 2));
