import type { ThemeName } from '../drill/display/display-settings.ts';
import type { TextUnits } from '../unit-text.ts';
import { type Theme, themeOf } from './theme.ts';

/** What the terminal can show. */
export interface Look {
  readonly theme: Theme;
  /** False where the locale is not UTF-8: the picture is then plain ASCII. */
  readonly unicode: boolean;
  /** What speeds are told in; metric by default. */
  readonly units?: TextUnits;
}

type Environment = Readonly<Record<string, string | undefined>>;

/** True where the first of LC_ALL, LC_CTYPE and LANG that says anything names UTF-8 (POSIX order of precedence). */
export function isUtf8(env: Environment, platform: NodeJS.Platform): boolean {
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || '';
  return locale === '' ? platform === 'win32' : /utf-?8/i.test(locale);
}

/** A dumb terminal shows nothing but text, and the fonts of the Linux console have no braille. */
const PLAIN_TERMINALS: readonly (string | undefined)[] = ['dumb', 'linux'];

/** The look for an environment; `color` is the program's decision on colour, which a dumb terminal overrules. */
export function lookOf(env: Environment, color: boolean, platform: NodeJS.Platform): Look {
  return {
    theme: themeFor(null, env, color),
    unicode: isUtf8(env, platform) && !PLAIN_TERMINALS.includes(env.TERM),
  };
}

/** A dumb terminal, and the video terminals of the VT family, which take the 5 in a colour for blinking. */
const COLOURLESS = /^(dumb$|vt\d)/;

/** The theme of that name, null for what suits the ground; without colour it is monochrome whatever the name says. */
export function themeFor(name: ThemeName | null, env: Environment, color: boolean): Theme {
  if (!color || COLOURLESS.test(env.TERM ?? '')) return themeOf('monochrome');
  return themeOf(name ?? (isLightGround(env) ? 'light' : 'colour'));
}

/**
 * True where the terminal says that its ground is white or light grey: COLORFGBG, as some terminals set it, ends with
 * the number of the ground's colour among the sixteen of ECMA-48 terminals.
 */
function isLightGround({ COLORFGBG }: Environment): boolean {
  return ['7', '15'].includes(COLORFGBG?.split(';').at(-1) ?? '');
}
