import { expect, test } from 'vitest';
import { zoneOf } from '../../../src/drill/live/zone-of.ts';
import { PLAN, ZONE } from './live-bench.ts';

test('a zone without heat and call is worked out once for a plan, and anew for another', () => {
  expect(zoneOf(PLAN, null, null)).toBe(ZONE);
  const other = zoneOf({ ...PLAN, variant: 'wet' }, null, null);
  expect(other.corner.variant).toBe('wet');
  expect(zoneOf(PLAN, null, null).corner.variant).toBe('qualifying');
});

test('hot brakes and a late call are worked out on their own', () => {
  const hot = { discC: { front: 600, rear: 500 }, padC: { front: 600, rear: 500 } };
  expect(zoneOf(PLAN, hot, null).car.discStartC).toEqual(hot.discC);
  expect(zoneOf(PLAN, null, 'defend').call?.word).toBe('defend');
  expect(zoneOf(PLAN, null, null)).toBe(ZONE);
});
