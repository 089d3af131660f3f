import { packField } from './pack-field.ts';

/** Mulberry32: 32 bits of state, enough for test signals. */
export function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** What the driver does at one moment; pedals 0..1, steering -1..1. */
export interface Driver {
  readonly brake: number;
  readonly throttle: number;
  readonly steering: number;
  readonly paddle: boolean;
}
export type Action = (timeS: number) => Partial<Driver>;
export const STILL: Driver = { brake: 0, throttle: 0, steering: 0, paddle: false };

interface Moment extends Driver {
  /** Number of the report since the device was plugged in. */
  readonly index: number;
  readonly timeS: number;
  readonly random: () => number;
  readonly bytes: Uint8Array;
}

export interface SimulatedField {
  readonly reportId?: number;
  readonly bitOffset: number;
  readonly bitSize: number;
  /** Counts at this moment; two's complement is made of negative ones. */
  readonly counts: (moment: Moment) => number;
}

export interface SimulatedDevice {
  readonly rateHz: number;
  /** Bytes after the id, by report id; id 0 is an unnumbered report. */
  readonly bytes: Readonly<Record<number, number>>;
  /** Filled in this order, so that a checksum can come last. */
  readonly fields: readonly SimulatedField[];
  readonly onChangeOnly?: boolean;
}

/** Reports of a device in someone's hands for a while; `startIndex` keeps counters running between recordings. */
export function record(
  device: SimulatedDevice,
  action: Action,
  seconds: number,
  random: () => number,
  startIndex: number = 0,
): Uint8Array[] {
  const reports: Uint8Array[] = [];
  const last = new Map<number, string>();
  for (let i = 0; i < seconds * device.rateHz; i++) {
    const timeS = i / device.rateHz;
    const state = { ...STILL, ...action(timeS), index: startIndex + i, timeS, random };
    for (const [id, length] of Object.entries(device.bytes)) {
      const report = reportOf(device, Number(id), length, state);
      const same = last.get(Number(id)) === report.join();
      last.set(Number(id), report.join());
      if (!device.onChangeOnly || !same) reports.push(report);
    }
  }
  return reports;
}

function reportOf(
  device: SimulatedDevice,
  id: number,
  length: number,
  state: Omit<Moment, 'bytes'>,
): Uint8Array {
  const lead = id === 0 ? 0 : 1;
  const report = new Uint8Array(lead + length);
  if (lead === 1) report[0] = id;
  const bytes = report.subarray(lead);
  for (const field of device.fields)
    if ((field.reportId ?? 0) === id)
      packField(bytes, field.bitOffset, field.bitSize, field.counts({ ...state, bytes }));
  return report;
}

/** Three presses of 1.4 s after 0.3 s of rest: up in 0.25 s, a hold that wavers, down in 0.5 s. */
export function threePresses(timeS: number): number {
  const t = (timeS - 0.3) % 1.6;
  if (timeS < 0.3 || timeS > 5.1 || t > 1.4) return 0;
  if (t < 0.25) return ease(t / 0.25);
  if (t < 0.9) return 1 - 0.06 * Math.sin((Math.PI * (t - 0.25)) / 0.65) ** 2;
  return ease((1.4 - t) / 0.5);
}
export const PRESSES_S = 5.2;

/** Left stop, right stop, straight again, twice. */
export function twoSweeps(timeS: number): number {
  return timeS > 5 ? 0 : Math.sin((2 * Math.PI * timeS) / 2.5);
}

function ease(x: number): number {
  return (1 - Math.cos(Math.PI * Math.min(1, Math.max(0, x)))) / 2;
}

/** Counts from `rest` to `full` with noise, cut to what the sensor can say. */
export function axisCounts(
  rest: number,
  full: number,
  of: (moment: Moment) => number,
  noise: number = 0,
): (moment: Moment) => number {
  return (moment) => {
    const jitter = noise * (moment.random() + moment.random() - 1) * 2;
    const value = Math.round(rest + (full - rest) * of(moment) + jitter);
    return Math.min(Math.max(rest, full), Math.max(Math.min(rest, full), value));
  };
}
