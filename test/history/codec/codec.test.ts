import { crc32, deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decodeBrake, decodeRecord } from '../../../src/history/codec/decode-record.ts';
import { encodeRecord } from '../../../src/history/codec/encode-record.ts';
import { Problem } from '../../../src/problem.ts';
import { quantiseRecord } from '../../../src/trace/quantise-record.ts';
import { repRecord } from '../../trace/rep-record.arbitrary.ts';
import { fiveSecondRep } from '../rep-signals.ts';

const NOISE = { bits: 14, counts: 1 };

/** A file with a good header around any payload. */
function wrap(payload: Uint8Array): Uint8Array {
  const header = Buffer.alloc(13);
  header.write('EbRr', 0, 'latin1');
  header.writeUInt8(1, 4);
  header.writeUInt32LE(payload.length, 5);
  header.writeUInt32LE(crc32(payload), 9);
  return Buffer.concat([header, deflateRawSync(payload)]);
}

test('a quantised record comes back to the bit', () => {
  fc.assert(
    fc.property(repRecord, (record) => {
      const kept = quantiseRecord(record);
      expect(decodeRecord(encodeRecord(kept))).toStrictEqual(kept);
      expect(encodeRecord(record)).toEqual(encodeRecord(kept));
    }),
    { numRuns: 300 },
  );
});

test('so does a whole rep, from any place in a larger buffer', () => {
  const kept = quantiseRecord(fiveSecondRep(7, NOISE));
  const bytes = encodeRecord(kept);
  const inside = new Uint8Array(bytes.length + 9);
  inside.set(bytes, 5);
  expect(decodeRecord(inside.subarray(5, 5 + bytes.length))).toStrictEqual(kept);
});

test('the brake alone is that of the whole record', () => {
  fc.assert(
    fc.property(repRecord, (record) => {
      const kept = quantiseRecord(record);
      expect(decodeBrake(encodeRecord(kept))).toStrictEqual(kept.brake);
    }),
    { numRuns: 300 },
  );
});

test('extreme values fit: 2^28 - 1 quanta of either sign in turn', () => {
  const most = (2 ** 28 - 1) / 65_536;
  const value = Float64Array.of(most, -most, most, most, -most, -most, most);
  const brake = { timeS: new Float64Array(value.length), value };
  const record = { ...fiveSecondRep(1, NOISE), brake };
  expect(decodeRecord(encodeRecord(record)).brake.value).toEqual(value);
});

test('the layout, byte by byte', () => {
  const step = Buffer.alloc(8);
  step.writeDoubleLE(0.25);
  const payload = Uint8Array.of(
    ...[5, 0, 1, 0], // brake with 4 samples, no throttle, a clutch without a sample, no wheel
    ...[3, 10, 0, 0xac, 0x02], // brake times in ticks: -2, then 10, 0 and 300 later (zigzag, then plain)
    ...[200, 1, 0, 9, 1], // brake values: +100, 0, -5, -1 to what the line predicts (zigzag)
    ...[1, 0x90, 0x03, 15, 2, 0x4c, 0x31], // one button: tick 200, downshift pressed, "L1"
    ...[1, 4, 6], // one gap: ticks 2 to 3
    ...[0xd0, 0x0f], // end: tick 1000
    ...step,
  );
  // Values: predicted 0, + 100 = 100; predicted 100 + 50 = 150, + 0 = 150; predicted 150 + 75 = 225, - 5 = 220;
  // predicted 220 + (220 - 100) / 2 = 280, - 1 = 279.
  expect(decodeRecord(wrap(payload))).toStrictEqual({
    brake: {
      timeS: Float64Array.of(-0.0002, 0.0008, 0.0008, 0.0308),
      value: Float64Array.of(100 / 65536, 150 / 65536, 220 / 65536, 279 / 65536),
    },
    throttle: null,
    clutch: { timeS: new Float64Array(0), value: new Float64Array(0) },
    steering: null,
    buttons: [{ timeS: 0.02, control: 'L1', pressed: true, action: 'downshift' }],
    gaps: [{ fromS: 0.0002, toS: 0.0003 }],
    brakeStepLevel: 0.25,
    endS: 0.1,
  });
});

test('any damaged byte is found', () => {
  const bytes = encodeRecord(fiveSecondRep(3, NOISE));
  const places = [...Array(60).keys(), ...Array.from({ length: 300 }, (_, i) => 60 + i * 29)];
  for (const place of places.filter((at) => at < bytes.length)) {
    const damaged = bytes.slice();
    damaged[place]! ^= 1 << (place % 8);
    expect(() => decodeRecord(damaged), `byte ${place}`).toThrow(Problem);
  }
});

test('so is an early end', () => {
  const bytes = encodeRecord(fiveSecondRep(3, NOISE));
  for (const length of [0, 4, 12, 13, 14, 100, bytes.length - 1])
    expect(() => decodeRecord(bytes.subarray(0, length)), `${length} bytes`).toThrow(Problem);
});

test('arbitrary bytes are a problem, whatever their header says', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      expect(() => decodeRecord(bytes)).toThrow(Problem);
      expect(() => decodeBrake(bytes)).toThrow(Problem);
    }),
  );
});

test('an arbitrary payload with a right check sum is a rep or a problem, nothing else', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (payload) => {
      try {
        decodeRecord(wrap(payload));
        decodeBrake(wrap(payload));
      } catch (error) {
        expect(error).toBeInstanceOf(Problem);
      }
    }),
    { numRuns: 2000 },
  );
});

test('the problem says where; a newer format is told from damage', () => {
  const bytes = encodeRecord(fiveSecondRep(3, NOISE));
  bytes[4] = 2;
  expect(() => decodeRecord(bytes, 'history.sqlite, rep 12')).toThrow(/format 2/);
  try {
    decodeRecord(bytes.subarray(1), 'history.sqlite, rep 12');
    expect.unreachable();
  } catch (error) {
    expect((error as Problem).where).toBe('history.sqlite, rep 12');
  }
});

test('a length that lies allocates nothing of that size', () => {
  const bytes = encodeRecord(fiveSecondRep(3, NOISE));
  new DataView(bytes.buffer).setUint32(5, 0xffff_ffff, true);
  expect(() => decodeRecord(bytes)).toThrow(Problem);
  const manySamples = Uint8Array.of(0xff, 0xff, 0xff, 0xff, 0x0f, 0, 0, 0);
  expect(() => decodeRecord(wrap(manySamples))).toThrow(Problem);
});
