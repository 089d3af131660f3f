import type { Schema } from '../profile/schema.ts';
import type { PerAxle } from './car.ts';

/** What a variant changes about a car, in SI; what is absent stays as in the car's file. */
export interface CarOverrides {
  /** On the friction of all tyres: about 0.6 in the wet. */
  readonly gripFactor?: number;
  readonly fuelKg?: number;
  /** One of the tyre states of the car's file. */
  readonly tyreState?: string;
  /** Share of the push-rod force on the front master cylinder. */
  readonly balanceBarFront?: number;
  readonly discStartC?: Partial<PerAxle<number>>;
  readonly padStartC?: Partial<PerAxle<number>>;
  readonly tyreStartC?: number;
  readonly airC?: number;
  /** A full battery takes up nothing. */
  readonly batteryFull?: boolean;
}

/** The same as keys of a file, for example of a corner sheet's variant. */
export interface CarOverridesFile {
  readonly grip_factor?: number;
  readonly fuel_kg?: number;
  readonly tyre_state?: string;
  readonly balance_bar_front?: number;
  readonly disc_front_c?: number;
  readonly disc_rear_c?: number;
  readonly pad_front_c?: number;
  readonly pad_rear_c?: number;
  readonly tyre_c?: number;
  readonly air_c?: number;
  readonly battery_full?: boolean;
}

export function temperature(description: string): Schema {
  return { type: 'number', description, minimum: -40, maximum: 1200 };
}

/** Schema of the override keys, for whichever file they stand in. */
export const CAR_OVERRIDE_PROPERTIES: Readonly<Record<keyof CarOverridesFile, Schema>> = {
  grip_factor: {
    type: 'number',
    description: 'On the friction of all tyres; about 0.6 in the wet',
    exclusiveMinimum: 0,
    maximum: 1.5,
  },
  fuel_kg: { type: 'number', description: 'Fuel on board', minimum: 0, maximum: 200 },
  tyre_state: {
    type: 'string',
    description: "One of the tyre states of the car's file",
    minLength: 1,
    maxLength: 20,
  },
  balance_bar_front: {
    type: 'number',
    description: 'Share of the push-rod force on the front master cylinder',
    exclusiveMinimum: 0,
    maximum: 1,
  },
  disc_front_c: temperature('Front discs at the start'),
  disc_rear_c: temperature('Rear discs at the start'),
  pad_front_c: temperature('Front pads at the start'),
  pad_rear_c: temperature('Rear pads at the start'),
  tyre_c: temperature('Tyres at the start'),
  air_c: temperature('Air'),
  battery_full: { type: 'boolean', description: 'A full battery takes up nothing' },
};

/** Keys of a file to overrides. Other keys in the same group are left alone. */
export function overridesOfFile(file: CarOverridesFile): CarOverrides {
  return defined({
    gripFactor: file.grip_factor,
    fuelKg: file.fuel_kg,
    tyreState: file.tyre_state,
    balanceBarFront: file.balance_bar_front,
    discStartC: defined({ front: file.disc_front_c, rear: file.disc_rear_c }),
    padStartC: defined({ front: file.pad_front_c, rear: file.pad_rear_c }),
    tyreStartC: file.tyre_c,
    airC: file.air_c,
    batteryFull: file.battery_full,
  });
}

type Defined<T> = { readonly [K in keyof T]?: Exclude<T[K], undefined> };

/** The entries that are there. */
function defined<T extends object>(entries: T): Defined<T> {
  return Object.fromEntries(
    Object.entries(entries).filter(([, value]) => value !== undefined),
  ) as Defined<T>;
}
