/** Shown wherever a driver chooses what to train. */
export const CAUTIONS: readonly string[] = [
  'A training aid, not a driving instruction; its model is simpler than any car.',
  'Targets are starting points: come to them from the safe side, with an instructor and by the rules of the circuit.',
  'Brake and wheel hardware can hurt: set it up as its maker says, and stop at pain.',
];
