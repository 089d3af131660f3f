/** A series with what published sources or reference programs say of its trend. */
export interface TrendCase {
  readonly values: readonly number[];
  readonly s: number;
  readonly variance: number;
  readonly z: number;
  /** Per place in the series. */
  readonly slope: number;
}

/**
 * J. Little, Mann-Kendall by hand, College of the Holy Cross, mathcs.holycross.edu/~little/Montserrat/
 * MannKendallByHand.txt (prints z as 2.9058); slope by SciPy 1.10.
 */
export const BY_HAND: TrendCase = {
  values: [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7],
  s: 54,
  variance: 332.6666666666667,
  z: 2.905836845996537,
  slope: 0.566666666666667,
};

/** Shampoo sales, the example of the package pyMannKendall (S, slope, intercept); variance, z and interval by SciPy. */
export const SHAMPOO: TrendCase & {
  readonly intercept: number;
  readonly interval: readonly [number, number];
} = {
  values: [
    266.0, 145.9, 183.1, 119.3, 180.3, 168.5, 231.8, 224.5, 192.8, 122.9, 336.5, 185.9, 194.3,
    149.5, 210.1, 273.3, 191.4, 287.0, 226.0, 303.6, 289.9, 421.6, 264.5, 342.3, 339.7, 440.4,
    315.9, 439.3, 401.3, 437.4, 575.5, 407.6, 682.0, 475.3, 581.3, 646.9,
  ],
  s: 440,
  variance: 5390,
  z: 5.979572523983071,
  slope: 11.509375,
  intercept: 78.73593749999998,
  interval: [8.625, 14.413333333333334],
};

/** Example of the R package Ipaper, slope_mk. */
export const TEN: TrendCase = {
  values: [4.81, 4.17, 4.41, 3.59, 5.87, 3.83, 6.03, 4.89, 4.32, 4.69],
  s: 5,
  variance: 125,
  z: 0.35777087639996635,
  slope: 0.04,
};

/** Many ties, by SciPy 1.10. */
export const TIED: TrendCase = {
  values: [70, 72, 72, 74, 74, 74, 78, 80],
  s: 24,
  variance: 60.666666666666664,
  z: 2.9529273983252993,
  slope: 1.3333333333333333,
};

/** The test of the package MannKendall.jl. */
export const ONE_TO_HUNDRED: TrendCase = {
  values: Array.from({ length: 100 }, (_, i) => i + 1),
  s: 4950,
  variance: 112750,
  z: 14.73869998208331,
  slope: 1,
};

/** Example of Sen (1968), JASA 63:1379, with the interval of the paper at 93 %. */
export const SEN = {
  times: [1, 2, 3, 4, 10, 12, 18],
  values: [9, 15, 19, 20, 45, 55, 78],
  slope: 4,
  intercept: 4,
  interval: [3.7142857142857144, 4.375],
} as const;

/**
 * Least |S| that is rarer than 5 in 100 on both sides together, with its chance: counted over all orders, as in the
 * tables of Kendall, Rank Correlation Methods.
 */
export const RARE_S: readonly (readonly [n: number, s: number, chance: number])[] = [
  [5, 10, 2 / 120],
  [6, 13, 12 / 720],
  [7, 15, 0.03015873015873016],
  [8, 18, 0.03115079365079365],
  [10, 23, 0.04662257495590829],
];
