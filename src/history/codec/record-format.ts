import { QUANTA_PER_BRAKE_LEVEL, QUANTA_PER_DEGREE, QUANTA_PER_LEVEL } from '../../trace/quanta.ts';
import type { ButtonAction } from '../../trace/rig-batch.ts';

/*
 * The samples of one rep as bytes, version 1. Header: the four bytes `EbRr`, one byte version, the length of the
 * plain payload and its CRC-32 (ISO 3309), both 32 bits little-endian. Then the payload, deflated (RFC 1951): number
 * of samples of each channel, times of each channel, values of each channel, buttons, gaps, end. Times are
 * differences to the sample before, values differences to `predicted`, both in quanta. All times stand together because the axes of one device share their
 * stamps: deflate then stores the second and third copy for almost nothing.
 */
export const MAGIC: Uint8Array = Uint8Array.of(0x45, 0x62, 0x52, 0x72);
export const FORMAT_VERSION: number = 1;
export const HEADER_BYTES: number = 13;

/** Far more than any rep: bounds what a damaged length can make the reader allocate. */
export const LARGEST_PAYLOAD: number = 64 * 1024 * 1024;

/** The channels in file order. */
export const CHANNELS: readonly {
  readonly name: 'brake' | 'throttle' | 'clutch' | 'steering';
  readonly perUnit: number;
}[] = [
  { name: 'brake', perUnit: QUANTA_PER_BRAKE_LEVEL },
  { name: 'throttle', perUnit: QUANTA_PER_LEVEL },
  { name: 'clutch', perUnit: QUANTA_PER_LEVEL },
  { name: 'steering', perUnit: QUANTA_PER_DEGREE },
];

/** A button's job is its place in this list; only ever append. */
export const ACTIONS: readonly (ButtonAction | null)[] = [
  null,
  'next',
  'repeat',
  'pause',
  'note',
  'feedback',
  'upshift',
  'downshift',
  'finish',
  'self-rating',
  'display',
];

/**
 * What a channel's next value is expected to be, in quanta: on the straight line of the last three. Whole release
 * ramps become noise around 0, and the noise itself grows less than with a line through the last two.
 *
 * @param last The value before.
 * @param thirdLast Two values before that.
 */
export function predicted(last: number, thirdLast: number): number {
  return last + ((last - thirdLast) >> 1);
}
