import { describe, expect, test } from 'vitest';
import type { LiveEvent } from '../../../src/live/live-event.ts';
import type { LiveRun } from '../../../src/live/live-run.ts';
import { lengthenedM } from '../../../src/score/lengthened.ts';
import type { LiveMeasures } from '../../../src/score/live-measures.ts';
import type { RepScore } from '../../../src/score/rep-score.ts';
import { scoreLiveRun } from '../../../src/score/score-live-rep.ts';
import { missedDownshifts, scoredShifts } from '../../../src/score/scored-shifts.ts';
import { WHOLE_RIG } from '../../live-car/rigs.ts';
import golden from '../../reference/live-score.json' with { type: 'json' };
import { BARE_CAR, bareZone, type Driven, driveByHand, handLevel } from './hand-driven.ts';

const BASE = golden.reps['straight release'].rep;
const WHEEL = { ...WHOLE_RIG, paddles: false };

function driven(controls = WHEEL, events: readonly LiveEvent[] = []): Driven {
  return driveByHand(
    bareZone(controls),
    (sM, timeS) => handLevel(BASE, sM, timeS),
    golden.newtons_per_level,
    events,
  );
}

function withColumns(
  { run, record }: Driven,
  column: (timeS: number, sM: number, speedMps: number) => Partial<Record<string, number>>,
): LiveMeasures {
  const { columns } = run;
  const rows = Array.from(columns.timeS, (timeS, i) =>
    column(timeS, columns.placeM[i]!, columns.speedMps[i]!),
  );
  const changed = Object.fromEntries(
    Object.keys(rows[0]!).map((key) => [key, Float64Array.from(rows, (row) => row[key]!)]),
  );
  const outcome = scoreLiveRun(record, { ...run, columns: { ...columns, ...changed } });
  return (outcome as RepScore).live!;
}

describe('use of grip', () => {
  test('is the mean of the busier axle from the first braking to the slowest point, 1 at most', () => {
    const live = withColumns(driven(), (timeS) => ({
      frontUse: timeS < 0 ? 0 : 0.6,
      rearUse: timeS < 0 ? 0 : 0.8,
    }));
    expect(live.gripUse).toBeCloseTo(0.8, 2);
    const over = withColumns(driven(), () => ({ frontUse: 4, rearUse: 0.2 }));
    expect(over.gripUse).toBe(1);
  });
});

describe('steering against the rail', () => {
  // Wheelbase and steering ratio of the GT example; it does not understeer, so the rail is its angle at any speed.
  const { chassis, steeringRatio } = BARE_CAR;
  const rail = (sM: number): number => {
    const place = Math.min(60, Math.max(0, sM));
    const curvature = 0.02 * Math.sin((Math.PI * place) / 120) ** 2;
    return steeringRatio * (chassis.cgToFrontM + chassis.cgToRearM) * curvature;
  };
  const steered = (angle: (sM: number) => number): LiveMeasures =>
    withColumns(driven(), (_, sM) => ({ steeringRad: angle(sM) }));

  test('the rail itself', () => {
    const live = steered(rail);
    expect(live.turnInErrorM).toBeCloseTo(0, 9);
    expect(live.steeringRatio).toBeCloseTo(1, 9);
  });

  test.each([-5, 4])('turned in by %i m', (metres) => {
    expect(steered((sM) => rail(sM - metres)).turnInErrorM).toBeCloseTo(metres, 1);
  });

  test('more angle', () => {
    expect(steered((sM) => 1.2 * rail(sM)).steeringRatio).toBeCloseTo(1.2, 9);
  });

  test('never turned in', () => {
    expect(steered(() => 0)).toMatchObject({ turnInErrorM: null, steeringRatio: 0 });
  });

  test('no wheel, no measure', () => {
    const { run, record } = driven({ ...WHEEL, steering: false });
    expect((scoreLiveRun(record, run) as RepScore).live).toMatchObject({
      turnInErrorM: null,
      steeringRatio: null,
    });
  });
});

describe('zone lost to locked wheels', () => {
  const { run } = driven();
  const { columns } = run;
  const locked = { fromS: 0.5, toS: 1 };
  const covered =
    columns.placeM[Math.round(1000 * (3 + locked.toS))]! -
    columns.placeM[Math.round(1000 * (3 + locked.fromS))]!;
  // The whole grip on the straight: 1.4 g.
  const braking = (share: number): LiveRun => ({
    ...run,
    columns: { ...columns, accelXMps2: columns.accelXMps2.map(() => -share * 1.4 * 9.80665) },
  });

  test('at the sliding share, the rest of the road', () => {
    expect(lengthenedM(braking(0.8), [locked])).toBeCloseTo(0.2 * covered, 1);
  });

  test('at the limit, none', () => {
    expect(lengthenedM(braking(1), [locked])).toBeCloseTo(0, 6);
    expect(lengthenedM(braking(1.1), [locked])).toBe(0);
    expect(lengthenedM(braking(0.8), [])).toBe(0);
  });
});

describe('places along the way', () => {
  test('level at the apex, and the speed where the target releases', () => {
    const { run, record } = driven();
    const live = (scoreLiveRun(record, run) as RepScore).live!;
    expect(live.apexLevel).toBe(0);
    expect(live.apexLevelError).toBeCloseTo(0, 3);
    expect(Math.abs(live.releaseSpeedErrorMps)).toBeLessThan(0.6);
  });

  test('a foot that stays on is above the target at the apex', () => {
    const held = driveByHand(
      bareZone(),
      (sM, timeS) => Math.max(sM > 16 && sM < 62 ? 0.05 : 0, handLevel(BASE, sM, timeS)),
      golden.newtons_per_level,
    );
    const live = (scoreLiveRun(held.record, held.run) as RepScore).live!;
    expect(live.apexLevel).toBe(0.05);
    expect(live.apexLevelError).toBeCloseTo(0.05, 2);
  });
});

describe('downshifts', () => {
  // Over-rev of gear 3 of the GT example: 7500 1/min on 0.33 m over 3.4 times 1.45.
  const speedIn = (ratio: number): number => ((7500 * 2 * Math.PI) / 60 / (ratio * 3.4)) * 0.33;
  const downshift = (atS: number, change: Partial<LiveEvent> = {}): LiveEvent => {
    const { columns } = driven().run;
    const atM = columns.placeM[Math.round(1000 * (3 + atS))]!;
    const made = { fromGear: 5, toGear: 4, rpm: 7000, overRev: false, rearUse: 0.5 };
    return { kind: 'downshift', ...made, atM, atS, byDriver: true, ...change } as LiveEvent;
  };
  const shiftsOf = (events: readonly LiveEvent[]) => {
    const { run } = driven(WHOLE_RIG, events);
    return scoredShifts(run, run.columns.placeM[3000]!);
  };

  test('the window opens where the car is slow enough for the gear', () => {
    const { run } = driven();
    const slow = run.columns.speedMps.findIndex((speed) => speed <= speedIn(1.45));
    const third = { fromGear: 4, toGear: 3 } as Partial<LiveEvent>;
    const [shift] = shiftsOf([downshift(1, third)]);
    expect(run.columns.speedMps[3000]!).toBeGreaterThan(speedIn(1.45));
    expect(Math.abs(shift!.earliestM! - run.columns.placeM[slow]!)).toBeLessThan(0.5);
    expect(shift!.verdict).toBe('safe');
  });

  test('the second one is looked for behind the first', () => {
    const second = downshift(2, { fromGear: 4, toGear: 3 } as Partial<LiveEvent>);
    const shifts = shiftsOf([downshift(1.6), second]);
    expect(shifts[1]!.earliestM!).toBeGreaterThanOrEqual(shifts[0]!.atM);
  });

  test.each([
    ['over-rev', 0.3, { overRev: true, rearUse: 3 }],
    ['too early', 0.3, { rearUse: 1.2 }],
    ['late', 3.4, {}],
  ] as const)('%s', (verdict, atS, change) => {
    expect(shiftsOf([downshift(atS, change as Partial<LiveEvent>)])[0]!.verdict).toBe(verdict);
  });

  test('what the program shifts and shifts up is not judged', () => {
    const byProgram = downshift(1.6, { byDriver: false } as Partial<LiveEvent>);
    const up = downshift(2, { kind: 'upshift' } as Partial<LiveEvent>);
    expect(shiftsOf([byProgram, up])).toEqual([]);
  });

  test('downshifts that were never made', () => {
    const inGear = (gear: number, controls = WHOLE_RIG): number => {
      const { run } = driven(controls);
      return missedDownshifts({ ...run, end: { ...run.end, gear } });
    };
    expect(inGear(5)).toBe(2);
    expect(inGear(3)).toBe(0);
    expect(inGear(2)).toBe(0);
    expect(inGear(5, { ...WHOLE_RIG, paddles: false })).toBe(0);
  });
});
