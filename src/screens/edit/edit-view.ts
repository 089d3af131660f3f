import type { DrivenCurve } from '../../target/derive/driven-curve.ts';
import type { EditModel } from '../../target/edit/edit-model.ts';

/** What the car of a corner would do with the curve. */
export interface EditedCar {
  /** Car, corner and variant in words. */
  readonly name: string;
  readonly driven: DrivenCurve;
  /** Level that the grip allows, on the target's own axis. */
  readonly limitAt: (at: number) => number;
}

/** Everything that the editor shows. */
export interface EditView {
  readonly model: EditModel;
  /** Where it will be saved, as the coach named it. */
  readonly path: string;
  /** Front line pressure at level 1, bar; null where neither file nor car gives it. */
  readonly fullScaleBar: number | null;
  /** Null without a car. */
  readonly car: EditedCar | null;
  readonly units: 'metric' | 'imperial';
}
