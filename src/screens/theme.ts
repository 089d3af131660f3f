import type { ThemeName } from '../drill/display/display-settings.ts';
import { BOLD, DEFAULT_INK, type Pen, REVERSE } from './cell-grid.ts';

/** A pen for each thing a screen shows. Every difference in colour is also one of shape or word. */
export interface Theme {
  readonly text: Pen;
  /** Frames, scales and what is at rest. */
  readonly quiet: Pen;
  readonly strong: Pen;
  readonly target: Pen;
  /** The driver's own trace and levels. */
  readonly driver: Pen;
  readonly now: Pen;
  /** What the driver has to deal with before going on. */
  readonly alert: Pen;
}

const plain = (style: number): Pen => ({ ink: DEFAULT_INK, style });

/**
 * Sky blue and orange of the qualitative palette by Okabe and Ito (2002), told apart under all common colour
 * deficiencies, as the nearest entries of the xterm 256-colour palette.
 */
export const COLOUR_THEME: Theme = {
  text: plain(0),
  quiet: { ink: 245, style: 0 },
  strong: plain(BOLD),
  target: { ink: 74, style: 0 },
  driver: { ink: 214, style: BOLD },
  now: plain(BOLD),
  alert: plain(BOLD | REVERSE),
};

/** The same hues, dark enough to be read on white. */
const LIGHT_THEME: Theme = {
  ...COLOUR_THEME,
  quiet: { ink: 241, style: 0 },
  target: { ink: 25, style: 0 },
  driver: { ink: 130, style: BOLD },
};

/** Everything in the terminal's own ink but the target, which is yellow or dark blue. */
const highContrast = (targetInk: number): Theme => ({
  ...MONOCHROME_THEME,
  target: { ink: targetInk, style: BOLD },
});

/** For NO_COLOR and terminals without colour: bold and reverse only. */
export const MONOCHROME_THEME: Theme = {
  text: plain(0),
  quiet: plain(0),
  strong: plain(BOLD),
  target: plain(0),
  driver: plain(BOLD),
  now: plain(BOLD),
  alert: plain(BOLD | REVERSE),
};

const THEMES: Readonly<Record<ThemeName, Theme>> = {
  colour: COLOUR_THEME,
  light: LIGHT_THEME,
  'high-contrast': highContrast(227),
  'high-contrast-light': highContrast(18),
  monochrome: MONOCHROME_THEME,
};

/** The theme of that name. */
export function themeOf(name: ThemeName): Theme {
  return THEMES[name];
}
