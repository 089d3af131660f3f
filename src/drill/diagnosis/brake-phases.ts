/** The parts of a braking zone in which a block is told apart, in the order in which they come. */
export const BRAKE_PHASES = ['hit', '100 to 50 %', '50 to 10 %', 'last 10 %'] as const;
export type BrakePhase = (typeof BRAKE_PHASES)[number];
