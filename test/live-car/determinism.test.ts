import fc from 'fast-check';
import { expect, test } from 'vitest';
import { driveLiveCar, startLiveCar } from '../../src/live/drive-live-car.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveCar } from '../../src/live/live-car.ts';
import { liveInputs } from '../../src/live/live-inputs.ts';
import { quantiseRecord } from '../../src/trace/quantise-record.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import type { ButtonEvent, RigBatch } from '../../src/trace/rig-batch.ts';
import type { Track } from '../../src/trace/track.ts';
import { GT_CAR, SMOOTH_CORNER } from '../reference/gt-car.ts';
import { WHOLE_RIG, zoneOf } from './rigs.ts';

const BUMPY = { ...SMOOTH_CORNER, bumps: [{ atM: -20, lengthM: 6, depth: 0.3 }] };
const UNMATCHED = { ...GT_CAR, gearbox: { ...GT_CAR.gearbox, blip: false } };
const ZONE = zoneOf(UNMATCHED, BUMPY, WHOLE_RIG);
const END_S = 2.5;

/** A rig's clock: the cue is nowhere near its zero, and stamps lie anywhere between the milliseconds. */
interface Rep {
  readonly cueS: number;
  readonly channels: readonly Track[];
  readonly buttons: readonly ButtonEvent[];
}

const jitteredTrack = (value: fc.Arbitrary<number>, cueS: number): fc.Arbitrary<Track> =>
  fc
    .array(fc.tuple(fc.double({ min: 1e-4, max: 0.02, noNaN: true }), value), {
      minLength: 600,
      maxLength: 900,
    })
    .map((samples) => {
      let at = cueS - 3.4;
      const timeS = Float64Array.from(samples, ([gap]) => (at += gap));
      return { timeS, value: Float64Array.from(samples, ([, v]) => v) };
    });

const rep: fc.Arbitrary<Rep> = fc.double({ min: 5, max: 4000, noNaN: true }).chain((cueS) =>
  fc.record({
    cueS: fc.constant(cueS),
    channels: fc.tuple(
      jitteredTrack(fc.constantFrom(0.3, 0.45, 0.6, 0.75, 0.9), cueS).map((track) =>
        footOff(track, cueS),
      ),
      jitteredTrack(fc.double({ min: 0, max: 1, noNaN: true }), cueS),
      jitteredTrack(fc.double({ min: 0, max: 1, noNaN: true }), cueS),
      jitteredTrack(fc.double({ min: -20, max: 90, noNaN: true }), cueS),
    ),
    buttons: fc
      .array(fc.tuple(fc.double({ min: -3.2, max: 2.4, noNaN: true }), fc.boolean()), {
        maxLength: 5,
      })
      .map((presses) =>
        presses
          .sort(([a], [b]) => a - b)
          .map(
            ([t, up]): ButtonEvent => ({
              timeS: cueS + t,
              control: 'paddle',
              pressed: true,
              action: up ? 'upshift' : 'downshift',
            }),
          ),
      ),
  }),
);

function footOff({ timeS, value }: Track, cueS: number): Track {
  return { timeS, value: value.map((v, i) => (timeS[i]! < cueS ? 0 : v)) };
}

function recordOfRep({ cueS, channels, buttons }: Rep): RepRecord {
  const [brake, throttle, clutch, steering] = channels.map((track) => {
    const kept = between(track, Number.NEGATIVE_INFINITY, cueS + END_S);
    return { timeS: kept.timeS.map((t) => t - cueS), value: kept.value };
  });
  return {
    brake: brake as Track,
    throttle: throttle as Track,
    clutch: clutch as Track,
    steering: steering as Track,
    buttons: buttons.map((event) => ({ ...event, timeS: event.timeS - cueS })),
    gaps: [],
    brakeStepLevel: 0,
    endS: END_S,
  };
}

/** Samples after `fromS` and not after `toS`. */
function between({ timeS, value }: Track, fromS: number, toS: number): Track {
  const keep = (_: number, i: number): boolean => timeS[i]! > fromS && timeS[i]! <= toS;
  return { timeS: timeS.filter(keep), value: value.filter(keep) };
}

function batchOf({ channels, buttons }: Rep, fromS: number, untilS: number): RigBatch {
  const [brake, throttle, clutch, steering] = channels.map((track) =>
    between(track, fromS, untilS),
  );
  return {
    brake: brake as Track,
    throttle: throttle as Track,
    clutch: clutch as Track,
    steering: steering as Track,
    buttons: buttons.filter(({ timeS }) => timeS > fromS && timeS <= untilS),
    gaps: [],
    untilS,
    dropped: 0,
  };
}

/** Drives batch by batch, each as long as the next of `lengthsS`, over and over. */
function driveInBatches(
  rep: Rep,
  lengthsS: readonly number[],
  see: (car: LiveCar, untilS: number) => void,
): LiveCar {
  let car = startLiveCar(ZONE);
  let fromS = Number.NEGATIVE_INFINITY;
  let untilS = rep.cueS - 3.4;
  for (let i = 0; untilS < rep.cueS + END_S; i++) {
    untilS = Math.min(untilS + lengthsS[i % lengthsS.length]!, rep.cueS + END_S);
    car = driveLiveCar(
      ZONE,
      car,
      liveInputs(batchOf(rep, fromS, untilS), rep.cueS),
      untilS - rep.cueS,
    );
    see(car, untilS);
    fromS = untilS;
  }
  return car;
}

/** Shrinking thousands of samples takes for ever: `endOnFailure` shows the first case that fails. */
const lengths = fc.array(fc.double({ min: 8e-4, max: 0.2, noNaN: true }), {
  minLength: 1,
  maxLength: 12,
});

test('driven live in batches of any length, the car is that of the stored record, to the bit', () => {
  fc.assert(
    fc.property(rep, lengths, (driven, lengthsS) => {
      const live = driveInBatches(driven, lengthsS, () => {});
      // The watermark of the last batch is a hair off the record's own end.
      const record = recordOfRep(driven);
      const run = driveRecord(ZONE, quantiseRecord(record));
      const { waiting: _, step, ...reached } = run.end;
      const { waiting: __, step: liveStep, ...liveReached } = live;
      expect(liveStep).toBe(step);
      expect(liveReached).toEqual(reached);
      expect(driveRecord(ZONE, record).columns).toEqual(run.columns);
    }),
    { numRuns: 8, endOnFailure: true },
  );
});

test('no step is taken that a later sample could still change', () => {
  fc.assert(
    fc.property(rep, lengths, (driven, lengthsS) => {
      driveInBatches(driven, lengthsS, ({ step }, untilS) => {
        if (step === 0) return;
        // The last step began this long after the cue; a stamp may move back by 0.05 ms.
        expect((step - 1 - 3000) / 1000 + 5e-5).toBeLessThanOrEqual(untilS - driven.cueS);
      });
    }),
    { numRuns: 4, endOnFailure: true },
  );
});

test('the reps of this test brake, shift, lock and steer', () => {
  const kinds = new Set<string>();
  for (const driven of fc.sample(rep, 10))
    for (const { kind } of driveRecord(ZONE, recordOfRep(driven)).end.events) kinds.add(kind);
  expect([...kinds].sort()).toEqual(['downshift', 'lock-up', 'upshift']);
});
