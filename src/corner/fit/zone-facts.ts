import type { DecelerationFit } from './fit-by-deceleration.ts';
import type { FitCar } from './fit-car.ts';
import type { FitSignals } from './fit-signals.ts';
import type { TurnedLine } from './turned-line.ts';
import type { Found } from './zone-fit.ts';

/** What whoever asks for the fit knows beside the log; null is not known. */
export interface FitWish {
  readonly car: FitCar | null;
  /** Friction for the radius where no signal says it. */
  readonly grip: number | null;
}

/** What the figures of a zone are made of; null is what its signals do not say. */
export interface ZoneFacts {
  readonly signals: FitSignals;
  readonly wish: FitWish;
  /** Place of the slowest point, m. */
  readonly slowestM: number;
  /** By the most trusted signal of turning. */
  readonly first: TurnedLine | null;
  readonly slowing: DecelerationFit | null;
  /** Of the grip, in braking. */
  readonly share: Found | null;
}
