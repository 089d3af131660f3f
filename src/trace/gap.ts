/** A stretch in which a device that streams at rest said nothing for longer than 50 ms. */
export interface Gap {
  readonly fromS: number;
  readonly toS: number;
}
