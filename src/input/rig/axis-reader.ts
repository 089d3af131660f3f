import { compileField, type FieldReader } from '../hid/compile-field.ts';
import type { ReportField } from '../hid/report-field.ts';
import { axisMap } from './axis-map.ts';
import type { AxisAssignment } from './rig.ts';
import type { TrackBuffer } from './track-buffer.ts';

/** Reads one axis out of the reports of its device into the track of its role. */
export class AxisReader {
  readonly #read: FieldReader;
  readonly #map: (counts: number) => number;
  readonly #track: TrackBuffer;
  readonly #min: number;
  readonly #max: number;
  #outOfRange = 0;

  /**
   * @param described The device's own word on the field's range, null where it gives none.
   * @throws Problem where the calibration cannot be used.
   */
  constructor(
    axis: AxisAssignment,
    wheelLockDeg: number | null,
    described: ReportField | null,
    track: TrackBuffer,
  ) {
    this.#read = compileField(axis.field);
    this.#map = axisMap(axis, wheelLockDeg);
    this.#track = track;
    this.#min = described?.logicalMin ?? Number.NEGATIVE_INFINITY;
    this.#max = described?.logicalMax ?? Number.POSITIVE_INFINITY;
  }

  /** Values outside the described range, null states among them: they were clamped to it. */
  get outOfRange(): number {
    return this.#outOfRange;
  }

  report(timeS: number, bytes: Uint8Array, start: number, length: number): void {
    const counts = this.#read(bytes, start, length);
    if (counts !== null) this.#track.push(timeS, this.#map(this.#inRange(counts)));
  }

  #inRange(counts: number): number {
    if (counts >= this.#min && counts <= this.#max) return counts;
    this.#outOfRange += 1;
    return counts < this.#min ? this.#min : this.#max;
  }
}
