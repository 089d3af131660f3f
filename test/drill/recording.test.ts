import { describe, expect, test } from 'vitest';
import { recordBatch, repRecord, startRecording } from '../../src/drill/recording.ts';
import type { RigBatch } from '../../src/trace/rig-batch.ts';
import { EMPTY_TRACK, type Track } from '../../src/trace/track.ts';

const track = (...samples: readonly (readonly [number, number])[]): Track => ({
  timeS: Float64Array.from(samples, ([t]) => t),
  value: Float64Array.from(samples, ([, v]) => v),
});

function batch(untilS: number, change: Partial<RigBatch>): RigBatch {
  return {
    brake: EMPTY_TRACK,
    throttle: EMPTY_TRACK,
    clutch: EMPTY_TRACK,
    steering: EMPTY_TRACK,
    buttons: [],
    gaps: [],
    untilS,
    dropped: 0,
    ...change,
  };
}

const AXES = { throttle: true, clutch: true, steering: true };
const BEFORE = { brake: 0.01, throttle: 1, clutch: null, steering: -3 };

describe('a record of a device that reports on change', () => {
  const recording = recordBatch(
    startRecording(batch(11, { brake: track([10.2, 0.02]) }), BEFORE, 10),
    batch(13, {
      brake: track([12, 0.5], [12.5, 0.2]),
      gaps: [
        { fromS: 10.1, toS: 10.2 },
        { fromS: 12.1, toS: 12.3 },
      ],
    }),
  );
  const record = repRecord(recording, { cueS: 11.5, endS: 12.4 }, AXES, 0.001);

  test('begins with what each axis held, 0.5 s before the cue, and ends with the rep', () => {
    expect([...record.brake.timeS]).toEqual([-0.5, 0.5]);
    expect([...record.brake.value]).toEqual([0.02, 0.5]);
    expect([...(record.throttle?.timeS ?? [])]).toEqual([-0.5]);
    expect([...(record.throttle?.value ?? [])]).toEqual([1]);
    expect(record.endS).toBeCloseTo(0.9, 12);
  });

  test('has no sample of an axis that never reported', () => {
    expect(record.clutch?.timeS).toHaveLength(0);
  });

  test('keeps the gaps that touch it, timed from the cue', () => {
    expect(record.gaps).toHaveLength(1);
    expect(record.gaps[0]?.fromS).toBeCloseTo(0.6, 12);
    expect(record.gaps[0]?.toS).toBeCloseTo(0.8, 12);
  });

  test('of a rep that ends before its cue leads up to that end', () => {
    const early = repRecord(recording, { cueS: 13, endS: 12.2 }, AXES, 0.001);
    expect([...early.brake.timeS]).toEqual([11.7 - 13, -1].map((t) => expect.closeTo(t, 9)));
    expect(early.endS).toBeCloseTo(-0.8, 12);
  });
});
