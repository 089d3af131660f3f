import { expect, test } from 'vitest';
import { encodeRecord } from '../../../src/history/codec/encode-record.ts';
import { fiveSecondRep } from '../rep-signals.ts';

const SEED = 20261125;
const RIGS = [
  ['12 bits, half a count of noise', { bits: 12, counts: 0.5 }],
  ['14 bits, one count of noise', { bits: 14, counts: 1 }],
  ['16 bits, three counts of noise', { bits: 16, counts: 3 }],
  ['16 bits of which 12 are free of noise', { bits: 16, counts: 8 }],
] as const;

test.each(RIGS)('five seconds of 1 kHz pedals and a 500 Hz wheel: %s', (name, noise) => {
  const record = fiveSecondRep(SEED, noise);
  expect(record.brake.timeS.length).toBe(5000);
  expect(record.steering?.timeS.length).toBe(2500);
  const bytes = encodeRecord(record).length;
  console.log(`${name} (seed ${SEED}): ${bytes} bytes`);
  expect(bytes).toBeLessThan(12_000);
});
