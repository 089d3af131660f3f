import type { CommandInput, OptionSpec } from './command.ts';
import { numberOption, textOption } from './option-value.ts';

/** What a drill's command line asks of the live car, checked. */
export interface LiveWish {
  /** Corner sheet or file; null where none was named with `--corner`. */
  readonly corner: string | null;
  /** Null takes the default. */
  readonly car: string | null;
  /** Null takes the sheet's first. */
  readonly variant: string | null;
  /** Seconds between the stops of a stint; null for no stint. */
  readonly stintS: number | null;
  readonly callShare: number;
}

export const LIVE_OPTIONS: Readonly<Record<string, OptionSpec>> = {
  corner: {
    type: 'string',
    value: 'K',
    help: 'corner sheet or file: drive its zone with a live car (`ebbline corner list`)',
  },
  car: {
    type: 'string',
    value: 'C',
    help: 'car or car file for the corner (default gt; `ebbline car list`)',
  },
  variant: { type: 'string', value: 'V', help: 'variant of the corner sheet (default its first)' },
  stint: {
    type: 'string',
    value: 'SECONDS',
    help: 'live car: brakes stay hot from rep to rep, SECONDS between stops',
  },
  calls: {
    type: 'string',
    value: 'SHARE',
    help: 'live car: share of reps with a late call, 0 to 1 (default 0)',
  },
};

/** Options that say that a corner is meant, not a target over time. */
export const LIVE_NAMES: readonly string[] = Object.keys(LIVE_OPTIONS);

/** @throws Problem (exit code 2) for a value that is not possible */
export function readLiveWish({ values }: CommandInput): LiveWish {
  const text = (name: string): string | null => textOption(values[name]);
  return {
    corner: text('corner'),
    car: text('car'),
    variant: text('variant'),
    stintS: numberOption(
      '--stint',
      values.stint,
      1,
      3600,
      'Say seconds between stops, from 1 to 3600.',
    ),
    callShare:
      numberOption('--calls', values.calls, 0, 1, 'Say a share from 0 to 1, such as 0.3.') ?? 0,
  };
}
