import { COLOUR_THEME, MONOCHROME_THEME, type Theme } from './theme.ts';

/** What the terminal can show. */
export interface Look {
  readonly theme: Theme;
  /** False where the locale is not UTF-8: the picture is then plain ASCII. */
  readonly unicode: boolean;
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
  const coloured = color && env.TERM !== 'dumb';
  return {
    theme: coloured ? COLOUR_THEME : MONOCHROME_THEME,
    unicode: isUtf8(env, platform) && !PLAIN_TERMINALS.includes(env.TERM),
  };
}
