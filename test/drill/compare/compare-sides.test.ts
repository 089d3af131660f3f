import { describe, expect, test } from 'vitest';
import { compareSides } from '../../../src/drill/compare/compare-sides.ts';
import type { Comparison } from '../../../src/drill/compare/comparison.ts';
import { carrySentences, comparisonTable } from '../../../src/drill/compare/comparison-lines.ts';
import { readTarget } from '../../../src/target/read-target.ts';
import type { RepRecord } from '../../../src/trace/rep-record.ts';
import { CURVE, type Made, madeRep, normals } from '../../target/learn/made-reps.ts';

const TARGET = readTarget(
  `name: Made up
corner_type: test
domain: time
rise: { duration_s: ${CURVE.riseS} }
peak_level: ${CURVE.peak}
hold_s: ${CURVE.holdEndS - CURVE.riseS}
release: { duration_s: ${CURVE.offS - CURVE.holdEndS}, shape: power-law, exponent: ${CURVE.exponent} }
`,
  'made-up.yaml',
);

/** Bar at a level of 1 in the made-up car. */
const BAR = 75;

function driver(seed: number, sd: number, own: Made = {}): () => Made {
  const random = normals(seed);
  return () => ({
    timingS: (own.timingS ?? 0) + sd * random(),
    rate: (own.rate ?? 1) * (1 + sd * random()),
    amount: (own.amount ?? 1) * (1 + sd * random()),
    ...(own.steering === undefined ? {} : { steering: own.steering }),
  });
}

const many = (count: number, made: () => Made): RepRecord[] =>
  Array.from({ length: count }, () => madeRep(made()));

function compare(
  rig: readonly RepRecord[],
  car: readonly RepRecord[],
  fullScale: number | null = null,
) {
  const numbered = (record: RepRecord, i: number) => ({ number: i + 1, record });
  return compareSides({
    target: TARGET,
    rig: rig.map(numbered),
    carAt: (levelOne) =>
      car.map(({ brake, ...rest }, i) => {
        const value = brake.value.map((level) => Math.min(1, (level * BAR) / levelOne));
        return numbered({ ...rest, brake: { ...brake, value } }, i);
      }),
    hardest: BAR,
    fullScale,
  });
}

function done(...args: Parameters<typeof compare>): Comparison {
  const found = compare(...args);
  if ('kind' in found) throw new Error('too few');
  return found;
}

const verdicts = ({ phases }: Comparison) => phases.map(({ verdict }) => verdict);

describe('one driver on both sides', () => {
  const found = done(many(12, driver(1, 0.01)), many(9, driver(2, 0.01)), BAR);

  test('carries all phases over', () => {
    expect(verdicts(found)).toEqual(new Array(4).fill('carried over'));
    expect(carrySentences(found)[0]).toBe(
      'Carried over: the hit, 100 to 50 %, 50 to 10 %, the last 10 %.',
    );
  });

  test('presses as hard, within the interval', () => {
    const { value, interval } = found.force.ratio!;
    expect(Math.abs(value - 1)).toBeLessThan(0.02);
    expect(interval.low).toBeLessThan(1);
    expect(interval.high).toBeGreaterThan(1);
    expect(Math.abs(found.force.levelOneInCar / BAR - 1)).toBeLessThan(0.02);
  });

  test('whose errors are many is not told to have carried anything over', () => {
    const wild = done(many(4, driver(5, 0.12)), many(4, driver(6, 0.12)));
    expect(verdicts(wild).slice(1, 3)).toEqual(['open', 'open']);
  });
});

describe('a driver who is other in the car', () => {
  test('later by 0.12 s: so say the key points, and 100 to 50 % does not carry over', () => {
    const found = done(many(12, driver(1, 0.01)), many(9, driver(2, 0.01, { timingS: 0.12 })));
    const at = (name: string) => found.points.find(({ point }) => point === name)!.difference!;
    for (const name of ['start of release', 'half release', 'final release', 'brake off']) {
      expect(Math.abs(at(name).shift - 0.12)).toBeLessThan(0.025);
      expect(at(name).interval.low).toBeLessThan(0.12 + 0.01);
      expect(at(name).interval.low).toBeGreaterThan(0);
    }
    expect(Math.abs(at('rise').shift)).toBeLessThan(0.01);
    expect(verdicts(found)[0]).toBe('carried over');
    expect(verdicts(found)[1]).toBe('not');
    // 0.12 s at the mean rate of that half, by hand: 0.4 over the time to (1/2)^(1/1.3) of the release
    const halfS = (CURVE.offS - CURVE.holdEndS) * (1 - 0.5 ** (1 / CURVE.exponent));
    const expected = (0.12 * CURVE.peak * 0.5) / halfS;
    expect(Math.abs(found.phases[1]!.difference!.shift - expected)).toBeLessThan(0.015);
    expect(carrySentences(found).join(' ')).toMatch(
      /Did not carry over: 100 to 50 % \(\d\.\d % more brake in the car\)/,
    );
    expect(comparisonTable(found).every((line) => line.length <= 80)).toBe(true);
  });

  test('with another pedal: no difference is left but the force', () => {
    const rig = many(10, driver(3, 0.01));
    const made = driver(4, 0.01);
    const same = many(8, made);
    const light = same.map((record) => ({
      ...record,
      brake: { ...record.brake, value: record.brake.value.map((level) => 0.6 * level) },
    }));
    const [one, other] = [done(rig, same, BAR), done(rig, light, BAR)];
    expect(other.force.levelOneInCar / one.force.levelOneInCar).toBeCloseTo(0.6, 3);
    expect(other.force.ratio!.value / one.force.ratio!.value).toBeCloseTo(0.6, 3);
    other.phases.forEach(({ difference }, i) => {
      expect(difference!.shift).toBeCloseTo(one.phases[i]!.difference!.shift, 2);
    });
    expect(verdicts(other)).toEqual(verdicts(one));
  });

  test('heavy on the rig alone: level 1 of the rig is less in the car', () => {
    const heavy = many(10, driver(3, 0.005, { amount: 1.1 }));
    const found = done(heavy, many(8, driver(4, 0.005)), BAR);
    expect(found.force.levelOneInCar).toBeCloseTo(BAR / 1.1, 0);
    expect(found.force.ratio!.value).toBeCloseTo(1 / 1.1, 2);
    expect(found.phases[0]!.verdict).toBe('carried over');
  });

  test('slower by 15 %: each key point is later by its place in the release', () => {
    const found = done(many(10, driver(9, 0.002)), many(10, driver(10, 0.002, { rate: 1.15 })));
    const releaseS = CURVE.offS - CURVE.holdEndS;
    // the level falls through a share s of the plateau after 1 - s^(1/exponent) of the release
    const lateS = (share: number) => 0.15 * releaseS * (1 - share ** (1 / CURVE.exponent));
    for (const [name, share] of [
      ['start of release', 0.9],
      ['half release', 0.5],
      ['final release', 0.1],
    ] as const) {
      const { difference } = found.points.find(({ point }) => point === name)!;
      expect(Math.abs(difference!.shift - lateS(share))).toBeLessThan(0.012);
    }
  });

  test('with the hands later than the foot', () => {
    const wheel = (turnS: number) => (timeS: number) =>
      60 * Math.min(1, Math.max(0, (timeS - turnS) / 0.8));
    const found = done(
      many(5, driver(7, 0.005, { steering: wheel(0.9) })),
      many(5, driver(8, 0.005, { steering: wheel(1.05) })),
    );
    const { difference } = found.points.find(({ point }) => point === 'wheel to brake')!;
    expect(Math.abs(difference!.shift - 0.15)).toBeLessThan(0.02);
  });
});

describe('what cannot be said', () => {
  test('that both sides carried over what neither of them does', () => {
    const early = { timingS: -0.2, rate: 0.85 };
    const found = done(many(6, driver(1, 0.01, early)), many(6, driver(2, 0.01, early)));
    expect(verdicts(found)[3]).toBe('not driven');
    expect(carrySentences(found)).toContain('Hardly on the brake on either side: the last 10 %.');
  });

  test('nothing of the wheel or the force where nobody knows them', () => {
    const found = done(many(3, driver(1, 0.01)), many(3, driver(2, 0.01)));
    expect(found.points.at(-1)).toEqual({ point: 'wheel to brake', difference: null });
    expect(found.force.ratio).toBeNull();
    // Three against three: the widest interval of the rank-sum test leaves out 2 of 20 orders.
    expect(found.phases[0]!.difference!.interval.level).toBeCloseTo(0.9, 12);
  });

  test('under three on a side: how many there are, and why', () => {
    const empty = madeRep({ amount: 0 });
    expect(compare(many(5, driver(1, 0.01)), [...many(2, driver(2, 0.01)), empty])).toMatchObject({
      kind: 'too few',
      rigReps: 5,
      carReps: 2,
      uncomparedCar: [{ number: 3, reason: 'never braked' }],
    });
  });
});
