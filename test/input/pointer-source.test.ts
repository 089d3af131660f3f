import { firstValueFrom, Subject, take, toArray } from 'rxjs';
import { describe, expect, test } from 'vitest';
import { parseDescriptor } from '../../src/input/hid/parse-descriptor.ts';
import { POINTER_DEVICE, POINTER_RIG } from '../../src/input/pointer-rig.ts';
import { openPointerSource, type PointerHeight } from '../../src/input/pointer-source.ts';
import type { ReportBatch } from '../../src/input/report-batch.ts';
import { createRigDecoder } from '../../src/input/rig/rig-decoder.ts';
import type { RigBatch } from '../../src/trace/rig-batch.ts';

function pointer() {
  let timeUs = 0;
  const height$ = new Subject<PointerHeight>();
  const ticks$ = new Subject<void>();
  const source = openPointerSource(height$, { ticks$, nowUs: () => timeUs });
  const raw: ReportBatch[] = [];
  const decoder = createRigDecoder(POINTER_RIG, source.devices);
  const decoded: RigBatch[] = [];
  source.batches$.subscribe((batch) => {
    raw.push(batch);
    decoded.push(decoder.decode(batch));
  });
  const at = (us: number, fraction: number): void => {
    timeUs = us;
    height$.next({ fraction });
  };
  const tick = (us: number): void => {
    timeUs = us;
    ticks$.next();
  };
  return { source, raw, decoded, at, tick, height$ };
}

describe('openPointerSource', () => {
  test('a height goes through the decoder and comes out as a level at its time', () => {
    const { at, tick, decoded } = pointer();
    at(1000, 0);
    at(3000, 0.5);
    at(5000, 1);
    tick(8000);
    expect([...decoded[0]!.brake.timeS]).toEqual([0.001, 0.003, 0.005]);
    expect(decoded[0]!.brake.value[0]).toBe(0);
    expect(decoded[0]!.brake.value[1]).toBeCloseTo(0.5, 4);
    expect(decoded[0]!.brake.value[2]).toBe(1);
    expect(decoded[0]!.untilS).toBe(0.008);
  });

  test('batches come while the mouse rests, without reports', () => {
    const { tick, raw } = pointer();
    tick(8000);
    tick(16000);
    expect(raw.map(({ count, untilUs }) => [count, untilUs])).toEqual([
      [0, 8000],
      [0, 16000],
    ]);
  });

  test('heights beyond the picture clamp, none are passed over', () => {
    const { at, tick, decoded } = pointer();
    for (const fraction of [-0.2, 1.7, Number.NaN, Number.POSITIVE_INFINITY]) at(1000, fraction);
    tick(8000);
    expect([...decoded[0]!.brake.value]).toEqual([0, 1, 1]);
  });

  test('is closed for good', async () => {
    const { source, tick, raw, height$ } = pointer();
    await source.close();
    await source.close();
    tick(8000);
    expect(raw).toEqual([]);
    expect(height$.observed).toBe(false);
  });

  test('by its own clock batches follow each other', async () => {
    const source = openPointerSource(new Subject());
    const batches = await firstValueFrom(source.batches$.pipe(take(3), toArray()));
    expect(batches[1]!.untilUs).toBeGreaterThan(batches[0]!.untilUs);
    expect(batches[2]!.untilUs).toBeGreaterThan(batches[1]!.untilUs);
    await source.close();
  });
});

test('the device describes what the rig reads', () => {
  const { fields, warnings } = parseDescriptor(POINTER_DEVICE.descriptor!);
  expect(warnings).toEqual([]);
  expect(fields).toHaveLength(1);
  expect(fields[0]).toMatchObject({
    ...POINTER_RIG.axes[0]!.field,
    usagePage: 0x02,
    usageId: 0xc5,
    logicalMin: 0,
    logicalMax: 65535,
  });
});
