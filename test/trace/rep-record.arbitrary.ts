import fc, { type Arbitrary } from 'fast-check';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import type { ButtonEvent } from '../../src/trace/rig-batch.ts';
import type { Track } from '../../src/trace/track.ts';

const timeS: Arbitrary<number> = fc.double({ min: -20, max: 600, noNaN: true });

function track(min: number, max: number): Arbitrary<Track> {
  return fc
    .array(fc.tuple(timeS, fc.double({ min, max, noNaN: true })), { maxLength: 60 })
    .map((samples) => ({
      timeS: Float64Array.from(samples, ([time]) => time).sort(),
      value: Float64Array.from(samples, ([, value]) => value),
    }));
}

const button: Arbitrary<ButtonEvent> = fc.record({
  timeS,
  control: fc.string({ unit: 'grapheme' }),
  pressed: fc.boolean(),
  action: fc.constantFrom(
    null,
    'next',
    'repeat',
    'pause',
    'note',
    'feedback',
    'upshift',
    'downshift',
  ),
});

/** Any recording the contract allows: missing channels, empty channels, equal times, levels a bit outside 0..1. */
export const repRecord: Arbitrary<RepRecord> = fc.record({
  brake: track(-0.1, 1.1),
  throttle: fc.option(track(0, 1)),
  clutch: fc.option(track(0, 1)),
  steering: fc.option(track(-1100, 1100)),
  buttons: fc.array(button, { maxLength: 5 }),
  gaps: fc.array(fc.record({ fromS: timeS, toS: timeS }), { maxLength: 3 }),
  brakeStepLevel: fc.double({ min: 0, max: 1, noNaN: true }),
  endS: timeS,
});
