import type { Schema } from '../profile/schema.ts';

/** How the two domains name their positions and lengths, so that every key carries its unit. */
export interface DomainKeys {
  readonly domain: 'time' | 'distance';
  readonly unit: 's' | 'm';
  readonly position: 'time_s' | 'distance_m';
  readonly length: 'duration_s' | 'length_m';
  /** What a position is, in words. */
  readonly from: string;
  readonly longest: number;
}

export const TIME: DomainKeys = {
  domain: 'time',
  unit: 's',
  position: 'time_s',
  length: 'duration_s',
  from: 'Seconds after the start of the rise',
  longest: 20,
};

export const DISTANCE: DomainKeys = {
  domain: 'distance',
  unit: 'm',
  position: 'distance_m',
  length: 'length_m',
  from: 'Metres to the slowest point',
  longest: 1000,
};

/** A level 0..1. */
export function levelIn(description: string): Schema {
  return {
    type: 'number',
    description,
    minimum: 0,
    maximum: 1,
  };
}

/** A place on the domain's axis. */
export function positionIn(keys: DomainKeys, what: string): Schema {
  const description = `${what}, ${keys.from.toLowerCase()}`;
  return { type: 'number', description, minimum: -keys.longest, maximum: keys.longest };
}

/** A length along the domain's axis. */
export function lengthIn(keys: DomainKeys, description: string): Schema {
  return { type: 'number', description, exclusiveMinimum: 0, maximum: keys.longest };
}
