import { describe, expect, test } from 'vitest';
import { onBatch } from '../../src/drill/on-batch.ts';
import { startDrill } from '../../src/drill/start-drill.ts';
import { levelPerShare, targetForce } from '../../src/drill/target-force.ts';
import { EMPTY_TRACK } from '../../src/trace/track.ts';
import { RAMP, setup } from './drill-rig.ts';

/** Up to 80 % of so many newtons. */
const of = (pedalForceN: number | null) => ({
  ...RAMP,
  fullScale: { pedalForceN, pressureBar: null },
});

describe('a rig of 700 N at full scale', () => {
  test.each([
    [1000, 'too much', 1],
    [875, 'reached', 0.8],
    [700, 'reached', 1],
    [350, 'reached', 2],
    [null, 'none told', 1],
  ] as const)('on a target whose level 1 is %s N', (pedalForceN, force, perShare) => {
    const target = of(pedalForceN);
    expect(targetForce(700, target)).toBe(force);
    expect(levelPerShare({ ownFullScaleN: 700, target })).toBeCloseTo(perShare, 12);
    expect(levelPerShare({ ownFullScaleN: null, target })).toBe(1);
  });

  // 0.25 and 0.75 of 700 N are 175 and 525 N, which are 0.5 and more than all of 350 N
  test('is heard in levels of the target, up to 1', () => {
    const heard = (share: number): number | null => {
      const model = startDrill(setup({ target: of(350), ownFullScaleN: 700 }));
      const brake = { timeS: Float64Array.of(0.1), value: Float64Array.of(share) };
      const batch = {
        ...{ brake, throttle: EMPTY_TRACK, clutch: EMPTY_TRACK, steering: EMPTY_TRACK },
        ...{ buttons: [], gaps: [], untilS: 0.2, dropped: 0 },
      };
      return onBatch(model, batch, [])[0].levels.brake;
    };
    expect(heard(0.25)).toBeCloseTo(0.5, 12);
    expect(heard(0.75)).toBe(1);
  });
});
