import type { Size } from '../../src/screens/cell-grid.ts';
import type { Written } from './pseudo-terminal.ts';
import { TerminalText } from './terminal-text.ts';

/** The end of a frame: DEC private mode 2026, synchronised output, is reset. */
export const FRAME_END = '\x1b[?2026l';
const LEVEL = /\bbrake +[^\d\s]* *(\d+) %/;
/** A brake level that was sent. */
export interface SentLevel {
  readonly atUs: number;
  readonly percent: number;
}

/**
 * When a screen showed each of the levels that were sent one after the other: the arrival of the last byte of the first
 * frame with it, in microseconds. Null for a level that never came on the screen.
 */
export function seenLevels(
  written: readonly Written[],
  size: Size,
  sent: readonly SentLevel[],
): readonly (number | null)[] {
  const seen: (number | null)[] = sent.map(() => null);
  for (const { atUs, percent } of shownLevels(written, size)) {
    const shown = sent.findLastIndex((level) => level.atUs <= atUs && level.percent === percent);
    if (shown >= 0) seen[shown] ??= atUs;
  }
  return seen;
}

interface ShownLevel {
  readonly atUs: number;
  readonly percent: number;
}

/** Whenever the level on the screen has changed. */
function* shownLevels(written: readonly Written[], size: Size): Generator<ShownLevel> {
  const screen = new TerminalText(size);
  let percent: number | null = null;
  for (const { atUs, text } of frames(written)) {
    screen.write(text);
    const now = LEVEL.exec(screen.lines.join('\n'))?.[1];
    if (now === undefined || Number(now) === percent) continue;
    percent = Number(now);
    yield { atUs, percent };
  }
}

/** Whole frames, each with the time at which its last byte came. */
function* frames(written: readonly Written[]): Generator<{ atUs: number; text: string }> {
  let open = Buffer.alloc(0);
  for (const { atUs, bytes } of written) {
    open = Buffer.concat([open, bytes]);
    for (let at = open.indexOf(FRAME_END); at >= 0; at = open.indexOf(FRAME_END)) {
      yield { atUs, text: open.subarray(0, at + FRAME_END.length).toString() };
      open = open.subarray(at + FRAME_END.length);
    }
  }
}
