import { describe, expect, test } from 'vitest';
import type { DrillSetup } from '../../../src/drill/drill-setup.ts';
import type { LivePlan } from '../../../src/drill/live/live-plan.ts';
import { viewOf } from '../../../src/drill/view-of.ts';
import { aScore } from '../../history/fixtures.ts';
import { type Fed, feed } from '../drill-rig.ts';
import { CUE_S, follows, liveDrill, ZONE } from './live-bench.ts';

interface Changes {
  readonly plan?: Partial<LivePlan>;
  readonly setup?: Partial<DrillSetup>;
}

const played = (toS: number, { plan, setup }: Changes = {}): Fed =>
  feed(liveDrill(plan, setup), follows(), { fromS: 0, toS, outcome: aScore() });
const view = (toS: number, changes: Changes = {}) => {
  const shown = viewOf(played(toS, changes).model);
  if (shown.live === null) throw new Error('no live car');
  return { ...shown, live: shown.live };
};
const kinds = ({ live }: ReturnType<typeof view>) => live.marks.map(({ kind }) => kind);

const HIDDEN: Changes = { setup: { feedback: 'hidden' } };
const FIRST_OF_DAY: Changes = { setup: { repsInLife: 9, hoursSinceLastRep: 30 } };

describe('beside the road stand', () => {
  const boards = ['board', 'board', 'board', 'board'];

  test('boards, turn-in and on shown reps the brake mark, in the order in which they come', () => {
    const { live } = view(1);
    expect(live.marks.map(({ sM }) => sM)).toEqual(
      [-200, -150, ZONE.derived.zone.brakePointM, -100, -50, 0].toSorted((a, b) => a - b),
    );
    expect(live.marks.find(({ kind }) => kind === 'brake')?.word).toBe('brake');
  });

  test('no brake mark on hidden and first-of-day reps', () => {
    expect(kinds(view(1, HIDDEN))).toEqual([...boards, 'turn-in']);
    expect(kinds(view(1, FIRST_OF_DAY))).toEqual([...boards, 'turn-in']);
  });

  test("the coach's mark on every rep, in the coach's own word", () => {
    const { sheet } = liveDrill().setup.live!;
    const plan = { sheet: { ...sheet, coachMark: { beforeApexM: 150, word: 'marshal post' } } };
    expect(view(1, { plan, ...HIDDEN }).live.marks).toContainEqual({
      sM: expect.closeTo(46 - 150, 6), // the entry of the sheet is 46 m long, turn-in to apex
      kind: 'coach',
      word: 'marshal post',
    });
  });
});

describe('what a rep gives away', () => {
  test('shown: target, own trace and grip as it is driven', () => {
    const { live } = view(CUE_S + 1);
    expect(live.level.target).not.toBeNull();
    const own = live.level.own!;
    const last = own.value.length - 1;
    expect(own.placeM[last]).toBe(live.placeM);
    expect(own.value[last]).toBeCloseTo(follows().brake!(CUE_S + 1), 2);
    expect(live.frontUse).toBeGreaterThan(0.5);
    expect(live.targetSpeedMps).not.toBeNull();
  });

  test('hidden: the target alone, the own trace with the result', () => {
    const driving = view(CUE_S + 1, HIDDEN);
    expect(driving.live.level.target).not.toBeNull();
    expect(driving.live.level.own).toBeNull();
    expect(driving.live.frontUse).toBeNull();
    expect(driving.brakeLevel).toBeNull();
    expect(view(CUE_S + 9, HIDDEN).live.level.own).not.toBeNull();
  });

  test('first of the day: no target at all, and neither plan nor result until all are over', () => {
    const driving = view(CUE_S + 1, FIRST_OF_DAY);
    expect(driving.live).toMatchObject({
      level: { target: null, own: null },
      steeringDeg: { target: null },
      corridorLevel: null,
      startOfReleaseM: null,
      targetSpeedMps: null,
    });
    expect(driving.target).toBeNull();
    expect(view(CUE_S + 9, FIRST_OF_DAY).live.plan).toBeNull();
  });

  test('says that the car is on rails, and what the rig leaves to the program', () => {
    expect(view(1).live.remarks).toEqual([
      expect.stringContaining('No wheel'),
      expect.stringContaining('No paddles'),
      expect.stringContaining('not distance judgement'),
    ]);
    const controls = { steering: true, throttle: false, clutch: false, paddles: true };
    expect(view(1, { plan: { controls } }).live.remarks).toHaveLength(1);
  });
});

describe('a late call', () => {
  const CALLED: Changes = { plan: { callShare: 1 } };

  test('is not to be seen before its place, neither in words nor in the target', () => {
    const before = view(1, CALLED);
    expect(before.live.call).toBeNull();
    expect(before.target).toBeNull();
    expect(before.live.fromM).toBe(ZONE.derived.zone.brakePointM);
    expect(before.live.level.target?.value).toEqual(view(1).live.level.target?.value);
  });

  test('changes target and brake mark where it comes', () => {
    const { model } = played(CUE_S - 0.05, CALLED);
    const { call, derived } = model.live!.zone;
    const after = viewOf(model);
    expect(after.live?.placeM).toBeGreaterThan(call!.atM);
    expect(after.live?.call).toBe(call!.word);
    expect(after.live?.fromM).toBe(derived.zone.brakePointM);
    expect(after.live?.marks.find(({ kind }) => kind === 'brake')?.sM).toBe(
      derived.zone.brakePointM,
    );
    expect(after.target).toBe(model.live?.zone.target);
    expect(derived.zone.brakePointM).toBeLessThan(ZONE.derived.zone.brakePointM);
  });

  test('never comes on the first reps of a day', () => {
    const { model } = played(1, { plan: { callShare: 1 }, ...FIRST_OF_DAY });
    expect(model.live?.zone.call).toBeNull();
  });
});

describe('a stint', () => {
  const REP_S = 17;
  const STINT: Changes = { plan: { stintS: 10 } };

  test('carries heat over: the next rep begins hotter and needs another force, said so', () => {
    const first = view(1, STINT).live.fade!;
    expect(first.peakForceN).toBe(first.coldPeakForceN);
    const { model } = played(REP_S + 2, STINT);
    const { car } = model.live!.zone;
    expect(viewOf(model)).toMatchObject({ rep: 2, live: { stage: 'approach' } });
    // braking from 245 to about 60 km/h puts some 2 MJ into the discs, which is far above 50 K
    expect(car.discStartC.front).toBeGreaterThan(400);
    const { fade } = viewOf(model).live!;
    expect(fade?.coldPeakForceN).toBe(first.coldPeakForceN);
    expect(Math.abs(fade!.peakForceN - fade!.coldPeakForceN)).toBeGreaterThan(1);
    expect(model.live?.zone.target).toMatchObject({
      id: ZONE.target.id,
      version: ZONE.target.version,
    });
  });

  test('after a late call compares with what the called target needs cold', () => {
    const called = view(CUE_S - 0.05, { plan: { stintS: 10, callShare: 1 } }).live;
    expect(called.call).not.toBeNull();
    expect(called.fade?.coldPeakForceN).toBe(called.fade?.peakForceN);
  });

  test('says before a late call what the prepared target needs', () => {
    const plain = view(1, STINT).live.fade;
    expect(view(1, { plan: { stintS: 10, callShare: 1 } }).live.fade).toEqual(plain);
  });

  test('without one every rep begins at the start temperatures and no fade is told', () => {
    const { model } = played(REP_S + 2);
    expect(viewOf(model).rep).toBe(2);
    expect(viewOf(model).live?.fade).toBeNull();
    expect(model.live?.zone.car.discStartC).toEqual({ front: 350, rear: 280 });
  });
});
