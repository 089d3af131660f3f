import { PICTURE_WIDTH } from './picture-size.ts';

/** Where the curves of a picture stand, in its units. */
export interface PlotBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A scale of d3-scale, as far as pictures ask for it. */
export interface Scale {
  (value: number): number;
  domain(): number[];
  range(): number[];
  ticks(count?: number): number[];
}

/** The usual place of a plot below a legend of some rows. */
export function plotBox(legendHeight: number, height: number): PlotBox {
  const top = legendHeight + 24;
  return { left: 36, right: PICTURE_WIDTH - 12, top, bottom: top + height };
}
