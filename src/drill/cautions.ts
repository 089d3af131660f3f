/** Shown wherever a driver chooses what to train, and before the first rep of a new driver. */
export const CAUTIONS: readonly string[] = [
  'A training aid, not a driving instruction; its model is simpler than any car.',
  'Targets are starting points: come to them from the safe side, with an instructor and by the rules of the circuit.',
  'Brake and wheel hardware can hurt: set it up as its maker says, and stop at pain.',
];

/** The same where there is one row for it. */
export const CAUTION_IN_SHORT =
  'A training aid, not a driving instruction (`ebbline help cautions`); stop at pain.';
