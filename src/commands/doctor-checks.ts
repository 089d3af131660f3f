import { foldLines } from '../input/rig/setup/fold-lines.ts';

/** What one check of `ebbline doctor` found. */
export interface Finding {
  readonly check: string;
  /** `note` where a machine cannot be asked: what is worth knowing about it. */
  readonly verdict: 'works' | 'limited' | 'broken' | 'note';
  /** What was seen, one line. */
  readonly found: string;
  /** What to do about it; null where nothing is to be done. */
  readonly fix: string | null;
}

export const works = (check: string, found: string): Finding => ({
  check,
  verdict: 'works',
  found,
  fix: null,
});

/** Node 20.19 is the first 20.x that loads all packages; the built-in SQLite comes with 22.13. */
export function checkNode(version: string): Finding {
  const [major = 0, minor = 0] = version.replace(/^v/, '').split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return works('Node', version);
  return { check: 'Node', verdict: 'broken', found: version, fix: 'Install Node 20.19 or later.' };
}

interface TerminalFacts {
  readonly interactive: boolean;
  readonly columns: number | undefined;
  readonly rows: number | undefined;
  readonly term: string | undefined;
}

export function checkTerminal({ interactive, columns, rows, term }: TerminalFacts): Finding {
  const check = 'terminal';
  if (!interactive) {
    return {
      check,
      verdict: 'limited',
      found: 'stdin or stdout is not a terminal',
      fix: 'Run it in a terminal window to see the drill; `drill --headless` prints lines.',
    };
  }
  const size = `${columns ?? 0}x${rows ?? 0}`;
  if (term === 'dumb') {
    return {
      check,
      verdict: 'limited',
      found: `${size}, TERM=dumb`,
      fix: 'Use a terminal that can move its cursor, or `drill --headless`.',
    };
  }
  if ((columns ?? 0) < 80 || (rows ?? 0) < 24) {
    return { check, verdict: 'limited', found: size, fix: 'Make the window at least 80x24.' };
  }
  return works(check, `${size}, TERM=${term ?? 'unset'}`);
}

/** The curve is drawn in braille cells, which need a UTF-8 locale. */
export function checkCharacters(utf8: boolean): Finding {
  if (utf8) return works('characters', 'UTF-8');
  return {
    check: 'characters',
    verdict: 'limited',
    found: 'the locale is not UTF-8: the curve is drawn in plain characters',
    fix: 'Set LANG to a UTF-8 locale, for example `export LANG=C.UTF-8`.',
  };
}

/** @param failure why the HID library did not load, in words with its fix; null where it did */
export function checkHidLibrary(
  failure: { readonly found: string; readonly fix: string } | null,
): Finding {
  if (failure === null) return works('HID library', 'loads');
  return { check: 'HID library', verdict: 'broken', ...failure };
}

export interface DeviceFacts {
  readonly name: string;
  /** Null where it opens. */
  readonly refusal: { readonly found: string; readonly fix: string } | null;
}

/** @param devices pedals and wheels found; null where the HID library did not load */
export function checkDevices(devices: readonly DeviceFacts[] | null): Finding[] {
  const check = 'devices';
  if (devices === null) {
    return [
      {
        check,
        verdict: 'limited',
        found: 'cannot look without the HID library',
        fix: 'Mend the line above; until then the virtual rig drives.',
      },
    ];
  }
  if (devices.length === 0) {
    return [
      {
        check,
        verdict: 'limited',
        found: 'no pedals or wheel found',
        fix: 'Plug them in and run it again; until then the virtual rig drives.',
      },
    ];
  }
  return devices.map(({ name, refusal }) =>
    refusal === null
      ? works(check, name)
      : { check, verdict: 'broken', found: `${name}: ${refusal.found}`, fix: refusal.fix },
  );
}

/** @param saved true where `rig setup` has been done for a device that is connected */
export function checkRig(saved: boolean): Finding {
  if (saved) return works('rig', 'set up');
  return {
    check: 'rig',
    verdict: 'limited',
    found: 'not set up',
    fix: 'Run `ebbline rig setup`: it takes a minute.',
  };
}

/** @param store the label of the open history, or why it did not open */
export function checkHistory(
  store:
    | { readonly label: string; readonly journal: boolean }
    | { readonly found: string; readonly fix: string },
): Finding {
  const check = 'history';
  if ('found' in store) return { check, verdict: 'broken', ...store };
  if (!store.journal) return works(check, store.label);
  return {
    check,
    verdict: 'limited',
    found: `${store.label}: no SQLite here, reps are kept in a journal until there is`,
    fix: 'Use Node 22.13 or later, or `npm install better-sqlite3@12` with a compiler at hand.',
  };
}

/** The findings as the table `doctor` prints. */
export function findingLines(findings: readonly Finding[]): string[] {
  const width = Math.max(0, ...findings.map(({ check }) => check.length));
  const indent = ' '.repeat(width + 11);
  return findings.flatMap(({ check, verdict, found, fix }) => [
    `${verdict.padEnd(7)}  ${check.padEnd(width)}  ${found}`,
    ...(fix === null ? [] : fix.split('\n').flatMap((line) => fixLines(indent, line))),
  ]);
}

/** Words are folded; an indented line is there to be copied and stays whole. */
function fixLines(indent: string, line: string): string[] {
  return line.startsWith('  ') ? [line] : foldLines(`${indent}${line}`, COLUMNS).split('\n');
}

const COLUMNS = 80;
