import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { driveOf } from '../../../src/drill/live/live-view-of.ts';
import { viewOf } from '../../../src/drill/view-of.ts';
import { driveLiveCar, startLiveCar } from '../../../src/live/drive-live-car.ts';
import { inputsOfRecord } from '../../../src/live/live-inputs.ts';
import type { LiveView } from '../../../src/live/live-view.ts';
import { quantiseRecord } from '../../../src/trace/quantise-record.ts';
import { type Fed, feed, type Script, say } from '../drill-rig.ts';
import { CUE_S, follows, liveDrill, ROLL_S, scoredRep, ZONE } from './live-bench.ts';

const played = (script: Script, toS: number, batch = 8): Fed =>
  feed(liveDrill(), script, { fromS: 0, toS, batch });
const view = (script: Script, toS: number) => viewOf(played(script, toS).model);
const live = (script: Script, toS: number): LiveView => {
  const shown = view(script, toS).live;
  if (shown === null) throw new Error('no live car');
  return shown;
};

const IDLE: Script = { brake: () => 0 };
const APPROACH_MPS = 245 / 3.6;

describe('a rep of the live car', () => {
  test('rolls as soon as the foot is off, at the constant speed of the approach', () => {
    expect(view(IDLE, 0.2)).toMatchObject({ phase: 'arming', live: { stage: 'waiting' } });
    expect(live(IDLE, 0.4).stage).toBe('approach');
    const [early, late] = [live(IDLE, 1), live(IDLE, 3)];
    expect(early.speedMps).toBeCloseTo(APPROACH_MPS, 9);
    expect(late.placeM - early.placeM).toBeCloseTo(2 * APPROACH_MPS, -0.3);
  });

  test('passes the brake point three seconds later, and nothing counts down to it', () => {
    const { brakePointM } = ZONE.derived.zone;
    // a look every 5 ms, and a sample is known 1 ms after it was taken
    expect(Math.abs(live(IDLE, CUE_S).placeM - brakePointM)).toBeLessThan(0.007 * APPROACH_MPS);
    expect(view(IDLE, 2)).toMatchObject({ toCueS: null, phase: 'cue' });
  });

  test('shows the zone once the foot is on the brake, and the plan after the result is held back', () => {
    const driving = live(follows(), CUE_S + 1);
    expect(driving.stage).toBe('zone');
    expect(driving.speedMps).toBeLessThan(APPROACH_MPS - 5);
    const over = played(follows(), CUE_S + 6.5);
    expect(viewOf(over.model)).toMatchObject({ phase: 'result', live: { stage: 'over' } });
    expect(viewOf(over.model).live?.plan).toBeNull();
    const later = feed(over.model, IDLE, { fromS: CUE_S + 6.5, toS: CUE_S + 9.5 });
    const marks = viewOf(later.model).live?.plan?.marks ?? [];
    expect(marks.map(({ kind }) => kind)).toEqual(
      expect.arrayContaining(['target brake point', 'brake point', 'turn-in', 'slowest', 'bump']),
    );
    expect(marks.map(({ sM }) => sM)).toEqual(marks.map(({ sM }) => sM).toSorted((a, b) => a - b));
  });

  test('is recorded from 0.3 s before it rolls, timed from the cue, and scored with its zone', () => {
    const effect = scoredRep(played(follows(), CUE_S + 7).effects);
    expect(effect.record.brake.timeS[0]).toBeCloseTo(-3.3, 9);
    expect(effect.zone?.target).toBe(effect.target);
    expect(effect.target.id).toBe('gt/kiln-hairpin/qualifying');
  });

  test('is the same however its samples are cut into batches, the car to the bit', () => {
    const end = (batch: number) => {
      const { effects, model } = played(follows(0.05), CUE_S + 7.5, batch);
      return { record: scoredRep(effects).record, drive: driveOf(model) };
    };
    const whole = end(8);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), (batch) => {
        const cut = end(batch);
        expect(cut.record).toEqual(whole.record);
        expect(cut.drive?.marks).toEqual(whole.drive?.marks);
        expect({ ...cut.drive?.car, waiting: null }).toEqual({
          ...whole.drive?.car,
          waiting: null,
        });
        expect(cut.drive?.own.level.count).toBe(whole.drive?.own.level.count);
      }),
      { numRuns: 10 },
    );
  });

  test('drives the same car, to the bit, as its stored record does', () => {
    const { effects, model } = played(follows(0.03), CUE_S + 7.5, 7);
    const { record, zone } = scoredRep(effects);
    const drive = driveOf(model)!;
    const atS = drive.strides * 0.005 - 3;
    const inputs = inputsOfRecord(quantiseRecord(record));
    const again = driveLiveCar(zone!, startLiveCar(zone!), inputs, atS);
    expect(again.step).toBeGreaterThan(6000);
    expect({ ...drive.car, waiting: null }).toEqual({ ...again, waiting: null });
  });
});

describe('the end of a rep of the live car', () => {
  const endS = (script: Script): number =>
    scoredRep(played(script, CUE_S + 26).effects).record.endS;
  const slowestS = (script: Script): number => {
    const { model } = played(script, CUE_S + 8);
    return driveOf(model)!.marks.slowestAtS!;
  };

  test('comes 0.6 s after the slowest point when the brake is off by then', () => {
    const early: Script = { brake: (t) => (t < CUE_S + 3 ? follows().brake!(t) : 0) };
    expect(endS(early)).toBeCloseTo(slowestS(early) + 0.6, 9);
  });

  test('waits for the brake to come off, 1.5 s beyond the slowest point at most', () => {
    const passes = slowestS(follows());
    const again = (offS: number): Script => ({
      brake: (t) => {
        const atS = t - CUE_S;
        if (atS < passes - 0.2) return follows().brake!(t);
        return atS < offS ? 0.04 : 0;
      },
    });
    expect(endS(again(passes + 0.5))).toBeGreaterThan(passes + 1);
    expect(endS(again(passes + 0.5))).toBeLessThan(passes + 1.25);
    expect(endS(again(1000))).toBeGreaterThan(passes + 1.45);
    expect(endS(again(1000))).toBeLessThan(passes + 1.6);
  });

  test('comes when the car has as good as stopped', () => {
    const early: Script = { brake: (t) => (t < CUE_S - 1 ? 0 : 0.45) };
    const { model, effects } = played(early, CUE_S + 12);
    expect(driveOf(model)!.car.speedMps).toBeLessThan(2);
    const { stoppedAtS, slowestAtS } = driveOf(model)!.marks;
    expect(slowestAtS).toBeNull();
    expect(scoredRep(effects).record.endS).toBeCloseTo(stoppedAtS! + 0.3, 9);
  });

  test('comes at turn-in for a driver who never brakes', () => {
    const rollS = -ZONE.rollFromM / APPROACH_MPS;
    expect(endS(IDLE)).toBeCloseTo(rollS - 3, 9);
    expect(view(IDLE, ROLL_S + rollS + 0.02).phase).toBe('result');
  });
});

describe('what stops a rep of the live car', () => {
  const lost = (atS: number) =>
    say(played(follows(), atS), { kind: 'device-lost', name: 'Pedals' });

  test('on the approach it was none yet', () => {
    const { effects } = say(played(IDLE, 2), { kind: 'key', action: 'pause' });
    expect(effects).toEqual([]);
    expect(lost(2).effects).toEqual([]);
  });

  test('under the brake it is void and stored with what was driven; it is driven again', () => {
    const { effects, model } = lost(CUE_S + 1);
    expect(effects).toMatchObject([
      { kind: 'store', rep: { voided: 'device lost', outcome: null, place: 1 } },
    ]);
    const [effect] = effects;
    expect(effect?.kind === 'store' && effect.rep.zone?.target.id).toBe(ZONE.target.id);
    const back = say({ model, effects: [] }, { kind: 'device-back', name: 'Pedals' }).model;
    expect(viewOf(back)).toMatchObject({ rep: 1, phase: 'arming', live: { stage: 'waiting' } });
  });

  test('an abort uses its place up', () => {
    const { effects, model } = say(played(follows(), CUE_S + 1), { kind: 'key', action: 'repeat' });
    expect(effects).toMatchObject([{ kind: 'store', rep: { voided: 'aborted', place: 1 } }]);
    expect(viewOf(model)).toMatchObject({ rep: 2, phase: 'arming' });
  });
});
