import type { Variation } from './variation.ts';

/** How a rep's target came from the one in the file, as the history keeps it: enough to make it again. */
export type TargetChange = { readonly kind: 'varied' } & Variation;
