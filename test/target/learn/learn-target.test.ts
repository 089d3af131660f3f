import { describe, expect, test } from 'vitest';
import { learnRepOf, sorted } from '../../../src/target/learn/learn-rep-of.ts';
import { type LearnedCurve, learnTarget } from '../../../src/target/learn/learn-target.ts';
import { learnedFileText } from '../../../src/target/learn/learned-file.ts';
import { readTarget } from '../../../src/target/read-target.ts';
import type { RepRecord } from '../../../src/trace/rep-record.ts';
import { CURVE, curveAt, type Made, madeRep, normals, record } from './made-reps.ts';

function learned(records: readonly RepRecord[]): LearnedCurve {
  const { used, leftOut } = sorted(records.map((rep, i) => learnRepOf(rep, i + 1)));
  expect(leftOut).toEqual([]);
  return learnTarget(used);
}

const reps = (all: readonly Made[]): LearnedCurve => learned(all.map((made) => madeRep(made)));

/** Errors that are nothing on average. */
const BALANCED: readonly Made[] = [
  { timingS: 0.12, rate: 1.1 },
  { timingS: -0.12, rate: 0.9 },
  { timingS: 0.08, rate: 0.92 },
  { timingS: -0.08, rate: 1.08 },
  {},
];

/** Largest distance of a curve of seconds after the onset from the known one. */
function furthest(curve: Float64Array, { registered, riseS }: LearnedCurve): number {
  const { fromS, stepS } = registered;
  return curve.reduce(
    (most, level, i) => Math.max(most, Math.abs(level - curveAt(fromS + i * stepS - riseS))),
    0,
  );
}

const meanOf = (curves: readonly Float64Array[]): Float64Array =>
  curves[0]!.map((_, i) => curves.reduce((sum, curve) => sum + curve[i]!, 0) / curves.length);

describe('registered mean', () => {
  test('of equal reps is the curve, and the file has its phases', () => {
    const curve = reps([{}, { startS: 3 }, { startS: -7 }]);
    const { rise, peakLevel, hold, release } = curve.phases;
    expect(furthest(curve.registered.mean, curve)).toBeLessThan(0.003);
    expect(furthest(curve.levels, curve)).toBeLessThan(0.012);
    expect(rise.shape).toBe('minimum-jerk');
    expect(rise.length).toBeCloseTo(CURVE.riseS, 2);
    expect(peakLevel).toBeCloseTo(CURVE.peak, 2);
    expect(Math.abs(rise.length + hold - CURVE.holdEndS)).toBeLessThan(0.03);
    expect(Math.abs(rise.length + hold + release.length - CURVE.offS)).toBeLessThan(0.03);
    expect(curve.spreadLevel).toBeLessThan(1e-3);
    expect(curve.corridor).toEqual({ kind: 'default', knots: [] });
  });

  test('recovers the curve that timing and rate have bent, where the mean over time is flatter', () => {
    const curve = reps(BALANCED);
    const overTime = meanOf(curve.registered.overTime);
    expect(furthest(curve.registered.mean, curve)).toBeLessThan(0.012);
    expect(furthest(overTime, curve)).toBeGreaterThan(0.024);
    expect(curve.spreadLevel).toBeLessThan(0.01);
    expect(curve.overTimeSpreadLevel).toBeGreaterThan(0.03);
  });

  test('recovers it exactly where the reps were bent between landmarks alone', () => {
    // Fall through 90 % of the peak by hand: 1 - u^... = 0.9 at u = 1 - 0.9^(1/1.3)
    const { holdEndS, offS, exponent, riseS } = CURVE;
    const fallS = holdEndS + (offS - holdEndS) * (1 - 0.9 ** (1 / exponent));
    const bent = [0.1, -0.1, 0.04, -0.04].map((lateS) =>
      record(
        (t) => {
          const ownFallS = fallS + lateS;
          if (t <= riseS) return curveAt(t);
          if (t >= ownFallS)
            return curveAt(fallS + ((t - ownFallS) * (offS - fallS)) / (offS - ownFallS));
          return curveAt(riseS + ((t - riseS) * (fallS - riseS)) / (ownFallS - riseS));
        },
        0,
        null,
      ),
    );
    const curve = learned(bent);
    expect(furthest(curve.registered.mean, curve)).toBeLessThan(0.006);
    expect(curve.registered.landmarks.map(({ name }) => name)).toEqual([
      'onset',
      'near peak',
      'start of release',
      'brake off',
    ]);
    // Standard deviation of 0.1, -0.1, 0.04, -0.04 with n - 1: sqrt(0.0232 / 3) = 0.08794
    expect(curve.registered.landmarks[2]!.spreadS).toBeCloseTo(0.08794, 2);
  });

  test('keeps the spread of the amount', () => {
    const random = normals(11);
    const sd = 0.05;
    const curve = reps(Array.from({ length: 40 }, () => ({ amount: 1 + sd * random() })));
    const at = Math.round((0.4 - curve.registered.fromS) / curve.registered.stepS);
    // 40 reps: the 99 % interval of a standard deviation is 0.77 to 1.37 times it (chi-square, 39).
    expect(curve.registered.spread[at]! / (sd * CURVE.peak)).toBeGreaterThan(0.77);
    expect(curve.registered.spread[at]! / (sd * CURVE.peak)).toBeLessThan(1.37);
    // heavier and lighter reps pass 90 % of their own peaks at the same moment
    expect(curve.registered.landmarks[2]!.spreadS).toBeLessThan(0.003);
  });

  test('has the functional standard deviation over the scored release as the spread', () => {
    const curve = reps(BALANCED);
    const { fromS, stepS, overTime } = curve.registered;
    const { rise, hold, release } = curve.phases;
    const startS = curve.riseS + rise.length + hold - 0.05;
    const first = Math.round((startS - fromS) / stepS);
    const last = Math.round((startS + 0.05 + release.length + 0.25 - fromS) / stepS);
    let squares = 0;
    for (let i = first; i <= last; i++) {
      const values = overTime.map((rep) => rep[i]!);
      const mean = values.reduce((a, b) => a + b) / 5;
      squares += values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 4;
    }
    expect(curve.overTimeSpreadLevel).toBeCloseTo(Math.sqrt(squares / (last - first + 1)), 9);
  });
});

test('a straight release is written as one, and read back', () => {
  const straight = (t: number): number =>
    t <= 0 || t >= 2 ? 0 : 0.7 * Math.min(1, t / 0.2, (2 - t) / 1.2);
  const records = [0, 1, 2].map((startS) => record(straight, startS, null));
  const curve = learned(records);
  expect(curve.phases.release.shape).toEqual({ kind: 'linear' });
  const { used } = sorted(records.map((rep, i) => learnRepOf(rep, i + 1)));
  const source = { kind: 'trace', name: 'a', choice: 'b', day: '2026-11-25' } as const;
  const text = learnedFileText(
    curve,
    { ...source, used, leftOut: [], feedback: null },
    { name: 'c', cornerType: 'd', fullScale: null },
  );
  const { level } = readTarget(text, 'straight.yaml');
  for (let timeS = 0; timeS < 2.2; timeS += 0.01)
    expect(Math.abs(level.at(timeS) - straight(timeS)), `${timeS}`).toBeLessThan(0.02);
});

describe('what does not change what is learned', () => {
  test('when the reps were driven', () => {
    const [still, moved] = [
      reps(BALANCED),
      reps(BALANCED.map((made, i) => ({ ...made, startS: 10 * i - 3 }))),
    ];
    moved.levels.forEach((level, i) => {
      expect(level).toBeCloseTo(still.levels[i]!, 6);
    });
    expect(moved.corridor.kind).toBe(still.corridor.kind);
  });

  test('how much full scale is: all levels and the spread follow it', () => {
    const [full, light] = [
      reps(BALANCED),
      reps(BALANCED.map((made) => ({ ...made, amount: 0.8 }))),
    ];
    light.registered.mean.forEach((level, i) => {
      expect(Math.abs(level - 0.8 * full.registered.mean[i]!)).toBeLessThan(0.02);
    });
    expect(light.phases.peakLevel).toBeCloseTo(0.8 * full.phases.peakLevel, 2);
    expect(light.overTimeSpreadLevel / full.overTimeSpreadLevel).toBeCloseTo(0.8, 1);
  });

  test('in which order they come', () => {
    const [one, other] = [reps(BALANCED), reps(BALANCED.toReversed())];
    other.levels.forEach((level, i) => {
      expect(level).toBeCloseTo(one.levels[i]!, 9);
    });
  });
});

describe('corridor', () => {
  const drivers = (seed: number) => {
    const random = normals(seed);
    return (): Made => ({
      timingS: 0.04 * random(),
      rate: 1 + 0.05 * random(),
      amount: 1 + 0.04 * random(),
    });
  };

  test.each([6, 15])('learned from %d reps holds four of five further ones', (count) => {
    const [driver, again] = [drivers(5 + count), drivers(900 + count)];
    const [shares, bands]: [number[], number[]] = [[], []];
    for (let trial = 0; trial < 10; trial++) {
      const curve = reps(Array.from({ length: count }, driver));
      expect(curve.corridor.kind).toBe('widened');
      const others = learned(Array.from({ length: 4 }, () => madeRep(again())));
      for (const rep of others.registered.overTime) {
        const { inside, inBand } = sharesOf(rep, curve);
        shares.push(inside);
        bands.push(inBand);
      }
    }
    const mean = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0) / all.length;
    // 48 reps that are in or out for long stretches: a standard error of some 5 %
    expect(mean(bands)).toBeGreaterThan(0.68);
    expect(mean(bands)).toBeLessThan(0.92);
    expect(mean(shares)).toBeGreaterThan(mean(bands));
  });

  function sharesOf(
    rep: Float64Array,
    { levels, band, corridor, riseS, registered }: LearnedCurve,
  ) {
    const { fromS, stepS } = registered;
    let [inside, inBand, count] = [0, 0, 0];
    const knots = corridor.knots;
    for (let i = 0; i < Math.min(rep.length, levels.length); i++) {
      const timeS = fromS + i * stepS - riseS;
      if (timeS < 0.5 || timeS > 1.9) continue;
      const next = knots.findIndex(({ x }) => x >= timeS);
      const half = Math.min(knots[next]!.y, knots[next - 1]!.y);
      const miss = Math.abs(rep[i]! - levels[i]!);
      count++;
      inside += Number(miss <= half);
      inBand += Number(miss <= band[i]!);
    }
    return { inside: inside / count, inBand: inBand / count };
  }

  test('is nowhere narrower than the default or the band', () => {
    const curve = reps(BALANCED);
    const { knots } = curve.corridor;
    expect(Math.min(...knots.map(({ y }) => y))).toBeGreaterThanOrEqual(0.015);
    const { fromS, stepS } = curve.registered;
    curve.band.forEach((half, i) => {
      const timeS = fromS + i * stepS - curve.riseS;
      const next = knots.findIndex(({ x }) => x >= timeS);
      if (next <= 0) return;
      expect(Math.min(knots[next]!.y, knots[next - 1]!.y)).toBeGreaterThanOrEqual(half - 1e-12);
    });
  });
});

describe('turn-in', () => {
  const wheel = (turnS: number) => (timeS: number) =>
    -60 * (1 - Math.cos(Math.PI * Math.min(1, Math.max(0, (timeS - turnS) / 1.2))));

  test('is a landmark where all reps have it in one order', () => {
    const curve = reps(
      [0.9, 0.95, 1].map((turnS, i) => ({ timingS: 0.02 * i, steering: wheel(turnS) })),
    );
    expect(curve.registered.landmarks.map(({ name }) => name)).toContain('turn-in');
    // leaves the middle at 0.95 s on average; a cosine leaves it gently
    expect(curve.turnInS).toBeGreaterThan(0.93);
    expect(curve.turnInS).toBeLessThan(1.1);
    expect(curve.steering[0]).toEqual({ x: curve.turnInS, y: 0 });
    expect(curve.steering.at(-1)!.y).toBeCloseTo(wheel(0.95)(CURVE.offS), -1);
  });

  test('is left out, with the reason, where it is not', () => {
    const reasonOf = (steering: readonly Made['steering'][]): string =>
      reps(steering.map((one) => ({ steering: one ?? null }))).registered.unused[0]!.reason;
    expect(reasonOf([null, null, null])).toBe('no rep has it');
    expect(reasonOf([wheel(0.9), wheel(0.9), null])).toBe('1 of 3 reps do not have it');
    expect(reasonOf([wheel(0.2), wheel(0.9), wheel(0.9)])).toContain('another order');
  });
});

describe('reps that cannot be taken', () => {
  test.each<[string, RepRecord]>([
    ['never braked', madeRep({ amount: 0 })],
    ['never off the brake', madeRep({ curve: (t) => (t < 0 ? 0 : Math.min(0.7, 3 * t)) })],
    [
      'off the brake and on it again',
      madeRep({ curve: (t) => curveAt(t) + curveAt(2 * (t - 2.3)) / 2 }),
    ],
    ['a gap in the recording', { ...madeRep(), gaps: [{ fromS: 0.5, toS: 0.6 }] }],
  ])('%s', (reason, rep) => {
    const { used, leftOut } = sorted([learnRepOf(rep, 7)]);
    expect({ used: used.length, leftOut }).toEqual({ used: 0, leftOut: [{ number: 7, reason }] });
  });

  test('under three are refused', () => {
    const { used } = sorted([madeRep(), madeRep()].map((rep, i) => learnRepOf(rep, i)));
    expect(() => learnTarget(used)).toThrow(RangeError);
  });
});
