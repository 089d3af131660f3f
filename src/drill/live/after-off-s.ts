/** Off for 0.3 s is off for good; another 0.3 s is recorded, so that no filter sees the edge. */
export const AFTER_OFF_S = 0.6;
