import type { Variation } from './variation.ts';

/** How a rep's target came from the one in the file, as the history keeps it: enough to make it again. */
export type TargetChange =
  | ({ readonly kind: 'varied' } & Variation)
  /** What was asked for followed the driver's own wheel, which is in the record. */
  | { readonly kind: 'paced by the steering' };
