import { expect, test } from 'vitest';
import { viewOf } from '../../src/drill/view-of.ts';
import { feed, fresh, RAMP, type Script } from './drill-rig.ts';

/** Foot off from 0 s: armed at 0.3, cue at 3.3. The ramp starts 0.1 s after the cue. */
const CUE_S = 3.301;
const START_S = CUE_S + 0.1;
const good: Script = { brake: (t) => RAMP.level.at(t - START_S) };

const at = (toS: number) => feed(fresh(), good, { fromS: 0, toS });
const phaseAt = (toS: number) => viewOf(at(toS).model).phase;

test('a rep goes from arming to rest without a key', () => {
  expect(phaseAt(0.2)).toBe('arming');
  expect(phaseAt(0.4)).toBe('countdown');
  expect(phaseAt(3.29)).toBe('countdown');
  expect(phaseAt(3.35)).toBe('cue');
  expect(phaseAt(3.5)).toBe('braking');
  // 1.4 s of target, 0.3 s to be sure that the brake is off and 0.3 s more on the record
  expect(phaseAt(START_S + 1.98)).toBe('braking');
  expect(phaseAt(START_S + 2.02)).toBe('result');
  expect(phaseAt(START_S + 2.02 + 5)).toBe('rest');
  expect(phaseAt(START_S + 2.02 + 10)).toBe('arming');
  expect(phaseAt(START_S + 2.02 + 10.4)).toBe('countdown');
});
