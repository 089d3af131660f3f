import { expect, test } from 'vitest';
import { startDrill } from '../../src/drill/start-drill.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import { setup } from './drill-rig.ts';

const messageWith = (change: Parameters<typeof setup>[0]): string =>
  viewOf(startDrill(setup(change))).message ?? '';

test('what levels stand for is told before the first rep, and nothing where there is nothing to tell', () => {
  const forceRemark = '100 % is 1000 N at the pedal, as in the car.';
  expect(messageWith({ forceRemark })).toContain(forceRemark);
  expect(messageWith({ forceRemark })).toContain('Take your foot off the brake.');
  expect(messageWith({})).not.toContain('100 %');
});

test('who drives for the first time is cautioned on the screen, in two rows of 76 at most', () => {
  const message = messageWith({ isFirstRun: true });
  expect(message).toContain('A training aid, not a driving instruction');
  expect(message).toContain('stop at pain');
  expect(message.length).toBeLessThanOrEqual(2 * 76 - 12);
  expect(messageWith({})).not.toContain('training aid');
});
