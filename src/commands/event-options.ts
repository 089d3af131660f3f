import type { Problem } from '../problem.ts';
import type { OptionSpec } from './command.ts';
import { notPossible, wholeOption } from './option-value.ts';

/** What a drill's command line asks of an event, checked. */
export interface EventWish {
  /** Event or file, by `--event`. */
  readonly event: string;
  /** Laps, the out-lap among them. */
  readonly laps: number;
  /** Null for the first that is no out-lap. */
  readonly session: string | null;
}

export const EVENT_OPTIONS: Readonly<Record<string, OptionSpec>> = {
  event: {
    type: 'string',
    value: 'E',
    help: 'laps of an event or event file, one rep a zone (`ebbline event list`)',
  },
  laps: { type: 'string', value: 'N', help: 'laps of the event, out-lap included (default 3)' },
  session: {
    type: 'string',
    value: 'S',
    help: 'session of the event: practice, qualifying, race (default its first)',
  },
};

/** The event names its zones and how each is driven. */
const SAID_BY_EVENT = ['target', 'reps', 'corner', 'variant', 'stint', 'calls'] as const;
const USUAL_LAPS = 3;
const MOST_LAPS = 50;

/**
 * @param text value of an option by its name, null where it was not given
 * @returns null where no event was asked for
 * @throws Problem (exit code 2) for a value that is not possible, or an option that the event answers itself
 */
export function readEventWish(
  text: (name: string) => string | null,
  named: string | null,
): EventWish | null {
  const event = text('event');
  if (event === null) {
    const alone = ['laps', 'session'].find((name) => text(name) !== null);
    if (alone === undefined) return null;
    throw wrong(alone, `--${alone} without --event`, 'Add --event with an event.');
  }
  if (named !== null)
    throw wrong('event', `${JSON.stringify(named)} beside --event`, 'The event names its zones.');
  const given = SAID_BY_EVENT.find((name) => text(name) !== null);
  if (given !== undefined)
    throw wrong(
      given,
      `--${given} beside --event`,
      NEXT[given] ?? 'The event says it: leave it out.',
    );
  return { event, laps: lapsOf(text('laps')), session: text('session') };
}

const NEXT: Readonly<Record<string, string>> = {
  reps: 'An event is driven in laps: say --laps N.',
  variant: 'The session says it: say --session S.',
};

function lapsOf(text: string | null): number {
  return text === null ? USUAL_LAPS : wholeOption('--laps', text, 1, MOST_LAPS);
}

function wrong(option: string, found: string, next: string): Problem {
  return notPossible(`--${option}`, found, next);
}
