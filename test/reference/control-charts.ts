/** Individuals chart: flow rates of NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2. */
export const INDIVIDUALS = {
  values: [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1],
  mean: 50.81,
  meanMovingRange: 1.8778,
  upper: 55.8041,
  lower: 45.8159,
} as const;

/** Exponentially weighted means: NIST/SEMATECH e-Handbook, section 6.3.2.4; the first limits by the formula there. */
export const WEIGHTED = {
  values: [
    52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2,
    52.6, 52.4, 53.6, 52.1,
  ],
  centre: 50,
  deviation: 2.0539,
  weight: 0.3,
  reach: 3,
  means: [
    50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05,
    49.38, 49.92, 50.73, 51.23, 51.94, 51.99,
  ],
  firstUpper: [51.8485, 52.2564, 52.4314, 52.5127, 52.5516],
  upper: 52.5884,
  lower: 47.4116,
} as const;

/** Cumulative sums: NIST/SEMATECH e-Handbook, section 6.3.2.3. */
export const SUMS = {
  values: [
    324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625,
    325.15, 328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
  ],
  centre: 325,
  slack: 0.3175,
  limit: 4.1959,
  high: [
    0, 0, 0, 0, 0.0325, 0, 0, 0, 0, 0, 0, 0, 3.0075, 4.94, 7.4475, 10.63, 11.9875, 14.445, 16.0025,
    19.035,
  ],
  low: [
    0, 0.0075, 0, 0.3325, 0, 0, 0.5575, 0.715, 0.1725, 0.255, 0.3125, 0, 0, 0, 0, 0, 0, 0, 0, 0,
  ],
  firstSignal: 14,
} as const;
