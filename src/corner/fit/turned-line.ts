import type { FittedLine } from './fit-line.ts';
import type { TurningSignal } from './turning-signal.ts';

/** A line, and the signal that it was fitted to. */
export interface TurnedLine {
  readonly signal: TurningSignal;
  readonly line: FittedLine;
}

export const SIGNAL_WORDS: Readonly<Record<TurningSignal['kind'], string>> = {
  'yaw-rate': 'yaw rate over speed',
  'lateral-acceleration': 'lateral acceleration over squared speed',
  steering: "steering, by the car's wheelbase, ratio and understeer",
  'steering-shape': 'the shape of steering, understeer left out',
};
