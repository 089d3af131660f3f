import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pacedStretch } from '../../src/target/paced-stretch.ts';
import type { Target } from '../../src/target/target.ts';
import { advancePace, startPace, type WheelPace } from '../../src/target/wheel-pace.ts';
import type { Track } from '../../src/trace/track.ts';
import { RAMP } from '../drill/drill-rig.ts';

/** To the right, 100 degrees in a straight line from 0.5 to 1.5 s: 1 degree in 10 ms. Worked by hand from here on. */
const TURNING: Target = {
  ...RAMP,
  steering: { start: 0.5, end: 1.5, at: (x) => -100 * Math.min(1, Math.max(0, x - 0.5)) },
};
const STRETCH = pacedStretch(TURNING)!;

const wheel = (deg: (timeS: number) => number, untilS = 4): Track => {
  const timeS = Float64Array.from({ length: 500 * untilS }, (_, i) => i / 500);
  return { timeS, value: timeS.map(deg) };
};
function placesOf(track: Track, untilS: number): number[] {
  const places = [0];
  advancePace(startPace(0), STRETCH, track, 0, untilS, (placeS) => places.push(placeS));
  return places;
}
const at = (places: readonly number[], timeS: number): number => places[Math.round(1000 * timeS)]!;

describe('the stretch that the wheel paces', () => {
  test('goes from 5 to 95 % of the largest angle, into the corner', () => {
    expect(STRETCH).toMatchObject({ direction: -1, fromDeg: 5, toDeg: 95 });
    expect(STRETCH.fromS).toBeCloseTo(0.55, 9);
    expect(STRETCH.toS).toBeCloseTo(1.45, 9);
    expect(STRETCH.timeAt(50)).toBeCloseTo(1, 9);
    expect([STRETCH.timeAt(1), STRETCH.timeAt(200)]).toEqual([STRETCH.fromS, STRETCH.toS]);
  });

  test('there is none without steering, with hardly any, or where the brake is off before it', () => {
    const steering = (at: (x: number) => number): Target => ({
      ...RAMP,
      steering: { start: 0.5, end: 1.5, at },
    });
    expect(pacedStretch(RAMP)).toBeNull();
    expect(pacedStretch(steering((x) => 4 * (x - 0.5)))).toBeNull();
    const late = { start: 1.4, end: 2, at: (x: number) => 100 * Math.max(0, x - 1.4) };
    expect(pacedStretch({ ...RAMP, steering: late })).toBeNull();
  });
});

describe('the place on the target', () => {
  test('of a wheel that follows the target is the clock', () => {
    const places = placesOf(
      wheel((t) => TURNING.steering!.at(t)),
      2,
    );
    for (const timeS of [0.1, 0.5, 0.8, 1, 1.4, 1.6, 2])
      expect(at(places, timeS)).toBeCloseTo(timeS, 2);
  });

  test('waits for a wheel that comes late, and goes on from there', () => {
    const places = placesOf(
      wheel((t) => TURNING.steering!.at(t - 0.3)),
      2.5,
    );
    expect(at(places, 0.5)).toBeCloseTo(0.5, 9);
    expect(at(places, 0.7)).toBeCloseTo(0.55, 9);
    expect(at(places, 0.84)).toBeCloseTo(0.55, 2);
    expect(at(places, 1.3)).toBeCloseTo(1, 2);
    expect(at(places, 2)).toBeCloseTo(1.7, 2);
  });

  test('goes at the speed of the hands: half as fast a wheel takes twice as long', () => {
    const places = placesOf(
      wheel((t) => -50 * Math.max(0, t - 0.5)),
      3,
    );
    expect(at(places, 1.5)).toBeCloseTo(1, 2);
    expect(at(places, 2)).toBeCloseTo(1.25, 2);
  });

  // In at 0.6 s to 55 degrees, the place of 1.05 s, and out again at 0.65 s: at twice the clock it is there at 0.85 s.
  test('catches up with hands that were quicker than it, though they go back meanwhile', () => {
    const places = placesOf(
      wheel((t) => (t >= 0.6 && t < 0.65 ? -55 : 0)),
      1.5,
    );
    expect(at(places, 0.6)).toBeCloseTo(0.55, 2);
    expect(at(places, 0.7)).toBeCloseTo(0.75, 2);
    expect(at(places, 0.85)).toBeCloseTo(1.05, 2);
    expect(at(places, 1.4)).toBeCloseTo(1.05, 2);
  });

  test('stays where the hands stop, and does not go back with them', () => {
    const places = placesOf(
      wheel((t) => (t < 1 ? TURNING.steering!.at(t) : -10)),
      3,
    );
    expect(at(places, 2.9)).toBeCloseTo(1, 2);
  });

  test('runs after a wheel that is thrown in at twice the clock at most', () => {
    const places = placesOf(
      wheel((t) => (t < 0.6 ? 0 : -100)),
      2,
    );
    // at 0.6 s it stands at 0.55; 0.9 s of target take 0.45 s
    expect(at(places, 0.8)).toBeCloseTo(0.95, 2);
    expect(at(places, 1.05)).toBeCloseTo(1.45, 2);
    expect(at(places, 1.25)).toBeCloseTo(1.65, 2);
  });

  test('is not moved by a wheel that turns the other way', () => {
    expect(
      at(
        placesOf(
          wheel((t) => 60 * t),
          3,
        ),
        3,
      ),
    ).toBeCloseTo(0.55, 9);
  });

  test('is the same however the samples are cut', () => {
    const track = wheel((t) => -80 * Math.sin(t) ** 2);
    const whole = placesOf(track, 3.5);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 3.5, noNaN: true }), { maxLength: 12 }),
        (cuts) => {
          const places = [0];
          let pace: WheelPace = startPace(0);
          let from = 0;
          for (const untilS of [...cuts.toSorted((a, b) => a - b), 3.5]) {
            const to = track.timeS.findIndex((t) => t > untilS);
            const slice = {
              timeS: track.timeS.slice(from, to),
              value: track.value.slice(from, to),
            };
            pace = advancePace(pace, STRETCH, slice, 0, untilS, (placeS) => places.push(placeS));
            from = to;
          }
          expect(places).toEqual(whole);
        },
      ),
    );
  });
});
