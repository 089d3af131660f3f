import { expect, test } from 'vitest';
import { startDrill } from '../../src/drill/start-drill.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import { setup } from './drill-rig.ts';

test('what levels stand for is told before the first rep, and nothing where there is nothing to tell', () => {
  const forceRemark = '100 % is 1000 N at the pedal, as in the car.';
  expect(viewOf(startDrill(setup({ forceRemark }))).message).toContain(forceRemark);
  expect(viewOf(startDrill(setup())).message ?? '').not.toContain('100 %');
});
