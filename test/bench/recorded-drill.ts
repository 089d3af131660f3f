import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import type { Size } from '../../src/screens/cell-grid.ts';
import type { LoopResult } from '../live/loop-process.ts';
import { type DrillRig, startDrill } from './drill-rig.ts';

type DeviceResult = LoopResult['results'][number];
/** A report of a recording: device, time stamp in microseconds, bytes in hexadecimal (input/recording). */
type RecordedReport = readonly [number, number, string];

/**
 * What the drill made of the devices' reports while it drew, by its own raw recording.
 *
 * @param send sends the reports, and resolves when all are sent
 */
export async function recordedDrill(
  rig: DrillRig,
  size: Size,
  send: () => Promise<void>,
): Promise<readonly DeviceResult[]> {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-record-'));
  const file = join(folder, 'reports.jsonl');
  const drill = await startDrill(rig, size, ['--record', file]);
  await delay(500);
  await send();
  await delay(500);
  await drill.close();
  const [, ...lines] = readFileSync(file, 'utf8').trimEnd().split('\n');
  rmSync(folder, { recursive: true });
  const reports = lines.flatMap(
    (line) => (JSON.parse(line) as { reports?: RecordedReport[] }).reports ?? [],
  );
  return rig.devices.map((_, device) => tally(rig, device, reports));
}

/** Counts by the counter in the reports, as `loop-tally.mjs` does. */
function tally(
  { devices }: DrillRig,
  device: number,
  reports: readonly RecordedReport[],
): DeviceResult {
  const { counter, sentUsAt } = devices[device]!;
  const modulus = 2 ** (8 * counter.bytes);
  const latenessUs: number[] = [];
  let [received, lost, last] = [0, 0, -1];
  for (const [of, atUs, hex] of reports) {
    if (of !== device) continue;
    const bytes = Buffer.from(hex, 'hex');
    const n = bytes.readUIntLE(counter.at, counter.bytes);
    lost += (n - last - 1 + modulus) % modulus;
    last = n;
    received += 1;
    latenessUs.push((atUs - bytes.readUInt32LE(sentUsAt)) % 2 ** 32);
  }
  return { received, lost, latenessUs };
}
