import { expect, test } from 'vitest';
import { isCalm } from '../../src/drill/is-calm.ts';
import { CUE_S, feed, fresh, press, type Script, START_S } from './drill-rig.ts';

const AT_REST: Script = { brake: () => 0 };
const BRAKING: Script = { brake: (timeS) => (timeS < START_S ? 0 : 0.6) };

const calmAt = (script: Script, toS: number): boolean =>
  isCalm(feed(fresh(), script, { fromS: 0, toS }).model);

test('a drill is calm until half a second before the cue', () => {
  expect(isCalm(fresh())).toBe(true);
  expect(calmAt(AT_REST, 0.2)).toBe(true);
  expect(calmAt(AT_REST, CUE_S - 0.6)).toBe(true);
  expect(calmAt(AT_REST, CUE_S - 0.4)).toBe(false);
  expect(calmAt(AT_REST, CUE_S + 0.05)).toBe(false);
});

test('it is not while the foot is on the brake, nor before the result', () => {
  expect(calmAt({ brake: () => 0.06 }, 0.2)).toBe(false);
  expect(calmAt(BRAKING, START_S + 0.5)).toBe(false);
  expect(calmAt({ brake: (timeS) => BRAKING.brake!(timeS) * Number(timeS < 5) }, 6)).toBe(false);
});

test('it is in a pause, as long as the foot is off', () => {
  const paused = press(feed(fresh(), AT_REST, { fromS: 0, toS: CUE_S - 0.4 }), 'pause').model;
  expect(paused.stage.kind).toBe('paused');
  expect(isCalm(paused)).toBe(true);
  const pressed = feed(paused, { brake: () => 0.5 }, { fromS: 3, toS: 3.1 }).model;
  expect(isCalm(pressed)).toBe(false);
});
