/** Something that happened to the car. Places are m from turn-in, times seconds from the cue. */
export type LiveEvent =
  /** `toM` and `toS` are null while it goes on. */
  | {
      readonly kind: 'lock-up' | 'anti-lock';
      readonly axle: 'front' | 'rear';
      readonly fromM: number;
      readonly fromS: number;
      readonly toM: number | null;
      readonly toS: number | null;
    }
  | {
      readonly kind: 'downshift' | 'upshift';
      readonly fromGear: number;
      readonly toGear: number;
      readonly atM: number;
      readonly atS: number;
      /** Engine speed in the new gear. */
      readonly rpm: number;
      readonly overRev: boolean;
      /** Largest use of the rear axle's grip while the engine was dragged up to speed. */
      readonly rearUse: number;
      /** False where the program shifted because the rig has no paddles. */
      readonly byDriver: boolean;
    };
