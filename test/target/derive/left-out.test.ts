import { expect, test } from 'vitest';
import { CAR_LEFT_OUT } from '../../../src/car/left-out.ts';
import { omissionLines } from '../../../src/car/omission.ts';
import { LEFT_OUT } from '../../../src/target/derive/left-out.ts';

test('each omission says which way the target errs and why, in a line of 80 columns at most', () => {
  for (const list of [CAR_LEFT_OUT, LEFT_OUT]) {
    const lines = omissionLines(list);
    list.forEach(({ what, bias, because }, i) => {
      expect(because.length).toBeGreaterThan(10);
      expect(lines[i]).toContain(bias);
      expect(lines[i]).toContain(`${what}: ${because}`);
      expect(lines[i]?.length, lines[i]).toBeLessThanOrEqual(80);
    });
    expect(new Set(list.map(({ what }) => what)).size).toBe(list.length);
  }
});
