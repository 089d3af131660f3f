import { compileField, type FieldReader } from '../../hid/compile-field.ts';
import type { ReportField } from '../../hid/report-field.ts';
import { axisMap } from '../axis-map.ts';
import type { AxisAssignment, AxisRole } from '../rig.ts';
import { CountSpread } from './count-spread.ts';
import { HeldTime } from './held-time.ts';
import { NewsMeter } from './news-meter.ts';

/** What one axis did while it was watched. Null where it was never heard, or not at rest. */
export interface AxisReading {
  readonly role: AxisRole;
  readonly counts: number | null;
  /** Level 0..1, or degrees with left positive for the steering. */
  readonly value: number | null;
  readonly minCounts: number | null;
  readonly maxCounts: number | null;
  /** Largest less smallest count while nothing was touched. */
  readonly restSpanCounts: number | null;
  /** Standard deviation while nothing was touched. */
  readonly restNoiseCounts: number | null;
  /** Smallest change seen. Above 1 where the sensor is coarser than the field that carries it. */
  readonly stepCounts: number | null;
  /** One count as a level, or as degrees for the steering. */
  readonly perCount: number;
  /** Time in which a pedal read 1: pressed as far as the calibration goes, or beyond. */
  readonly atFullS: number;
  /** How far beyond full the counts went. */
  readonly beyondFullCounts: number;
  /** Time at the last count the device can send, where it describes one. */
  readonly atLimitS: number;
  /** Mean count while nothing was touched at the start. */
  readonly startRestCounts: number | null;
  /** Mean count while nothing was touched at the end. */
  readonly endRestCounts: number | null;
  /** Mean count at the start away from the calibrated rest, towards full positive; null for a wheel. */
  readonly offRestCounts: number | null;
  /** Mean count at the end less that at the start, towards full positive. */
  readonly driftCounts: number | null;
  /** One count in newtons; null without known loads. */
  readonly newtonsPerCount: number | null;
  /** Milliseconds between two measurements of the sensor, which may be longer than between two reports. */
  readonly newsMs: number | null;
}

/** Where in a check a report came: nothing is touched at the start and at the end. */
export type CheckPhase = 'rest' | 'move' | 'end';

/** Watches one axis in counts, beside the decoder that turns them into levels. */
export class AxisMonitor {
  readonly #axis: AxisAssignment;
  readonly #read: FieldReader;
  readonly #map: (counts: number) => number;
  readonly #limit: number | null;
  readonly #all: CountSpread = new CountSpread();
  readonly #rest: CountSpread = new CountSpread();
  readonly #end: CountSpread = new CountSpread();
  readonly #news: NewsMeter = new NewsMeter();
  readonly #full: HeldTime = new HeldTime();
  readonly #atLimit: HeldTime = new HeldTime();
  readonly #perCount: number;
  #counts: number | null = null;
  #step = Number.POSITIVE_INFINITY;

  /** @throws Problem where the calibration cannot be used. */
  constructor(axis: AxisAssignment, wheelLockDeg: number | null, described: ReportField | null) {
    this.#axis = axis;
    this.#read = compileField(axis.field);
    this.#map = axisMap(axis, wheelLockDeg);
    this.#perCount = perCount(axis, wheelLockDeg);
    this.#limit = described === null ? null : limitOf(axis, described);
  }

  report(
    timeUs: number,
    phase: CheckPhase,
    bytes: Uint8Array,
    start: number,
    length: number,
  ): void {
    const counts = this.#read(bytes, start, length);
    if (counts === null) return;
    if (this.#counts !== null && counts !== this.#counts) {
      this.#step = Math.min(this.#step, Math.abs(counts - this.#counts));
      this.#news.change(timeUs);
    }
    this.#counts = counts;
    this.#all.add(counts);
    if (phase === 'rest') this.#rest.add(counts);
    if (phase === 'end') this.#end.add(counts);
    this.#full.turn(timeUs, this.#isPedal && this.#map(counts) >= 1);
    this.#atLimit.turn(timeUs, counts === this.#limit);
  }

  until(timeUs: number): void {
    this.#full.until(timeUs);
    this.#atLimit.until(timeUs);
  }

  read(): AxisReading {
    const counts = this.#counts;
    const [all, rest] = [this.#all.range, this.#rest.range];
    const [startRest, endRest] = [this.#rest.mean, this.#end.mean];
    const { restCounts, fullCounts, load } = this.#axis.calibration;
    const towardsFull = fullCounts > restCounts ? 1 : -1;
    return {
      role: this.#axis.role,
      counts,
      value: counts === null ? null : this.#map(counts),
      minCounts: all?.min ?? null,
      maxCounts: all?.max ?? null,
      restSpanCounts: rest === null ? null : rest.max - rest.min,
      restNoiseCounts: this.#rest.deviation,
      stepCounts: Number.isFinite(this.#step) ? this.#step : null,
      perCount: this.#perCount,
      atFullS: this.#full.totalS,
      beyondFullCounts: all === null ? 0 : this.#beyondFull(all),
      atLimitS: this.#atLimit.totalS,
      startRestCounts: startRest,
      endRestCounts: endRest,
      offRestCounts:
        startRest === null || !this.#isPedal ? null : towardsFull * (startRest - restCounts),
      driftCounts:
        startRest === null || endRest === null ? null : towardsFull * (endRest - startRest),
      newtonsPerCount: load === null ? null : Math.abs(load.newtonsPerCount),
      newsMs: this.#news.newsMs,
    };
  }

  get #isPedal(): boolean {
    return this.#axis.role !== 'steering';
  }

  #beyondFull({ min, max }: { readonly min: number; readonly max: number }): number {
    const { restCounts, fullCounts } = this.#axis.calibration;
    if (!this.#isPedal) return 0;
    return Math.max(0, fullCounts > restCounts ? max - fullCounts : fullCounts - min);
  }
}

function perCount({ role, calibration }: AxisAssignment, wheelLockDeg: number | null): number {
  const { restCounts, fullCounts, deadStart, deadEnd } = calibration;
  const span = Math.abs(fullCounts - restCounts) * (1 - deadStart - deadEnd);
  return (role === 'steering' ? (wheelLockDeg ?? 0) / 2 : 1) / span;
}

/** The end of the described range on the side of full; none for a wheel, which may rest on its stop. */
function limitOf({ role, calibration }: AxisAssignment, described: ReportField): number | null {
  if (role === 'steering') return null;
  return calibration.fullCounts > calibration.restCounts
    ? described.logicalMax
    : described.logicalMin;
}
