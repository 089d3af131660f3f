import type { ReportBatch } from '../../src/input/report-batch.ts';
import type { DeviceIdentity, RigDevice } from '../../src/input/rig-device.ts';

/** One report as a test writes it: device index, microseconds, bytes. */
export type Report = readonly [device: number, timeUs: number, bytes: readonly number[]];

/** Packs reports into the columns of a batch, with stale bytes around each as a reused buffer has. */
export function batchOf(untilUs: number, reports: readonly Report[], dropped = 0): ReportBatch {
  const size = reports.reduce((sum, [, , bytes]) => sum + bytes.length + 2, 0);
  const bytes = new Uint8Array(size + 4).fill(0xa5);
  const offset = new Uint32Array(reports.length + 1);
  let end = 1;
  reports.forEach(([, , report], i) => {
    offset[i] = end;
    bytes.set(report, end);
    end += report.length + 2;
  });
  return {
    count: reports.length,
    device: Uint8Array.from([...reports.map(([device]) => device), 9]),
    timeUs: Float64Array.from([...reports.map(([, timeUs]) => timeUs), 0]),
    offset,
    length: Uint16Array.from([...reports.map(([, , report]) => report.length), 7]),
    bytes,
    untilUs,
    dropped,
  };
}

export function identity(productId: number, more: Partial<DeviceIdentity> = {}): DeviceIdentity {
  return {
    vendorId: 0xf055,
    productId,
    serial: null,
    interfaceNumber: 0,
    usagePage: 1,
    usage: 4,
    ...more,
  };
}

export function deviceOf(
  productId: number,
  name: string,
  descriptor: Uint8Array | null = null,
): RigDevice {
  return { identity: identity(productId), name, path: `/dev/test${productId}`, descriptor };
}

/** 16 bits, least significant byte first, two's complement where negative. */
export function word(value: number): readonly [number, number] {
  const unsigned = value < 0 ? value + 65536 : value;
  return [unsigned % 256, Math.floor(unsigned / 256)];
}
