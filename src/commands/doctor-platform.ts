import {
  type RuledDevice,
  UDEV_RELOAD,
  UDEV_RULES_FILE,
  udevRules,
} from '../input/discovery/udev-rules.ts';
import { type Finding, works } from './doctor-checks.ts';

interface ColourFacts {
  /** False by --no-color or NO_COLOR. */
  readonly wanted: boolean;
  readonly term: string | undefined;
  /** COLORTERM: `truecolor` or `24bit` where the terminal has 24-bit colour. */
  readonly colorTerm?: string | undefined;
}

/** The pictures need 256 colours, and are whole without any; more are not used. */
export function checkColours({ wanted, term = '', colorTerm = '' }: ColourFacts): Finding {
  const check = 'colours';
  if (!wanted) return works(check, 'off, as NO_COLOR or --no-color says; shapes and words remain');
  if (term !== '' && term !== 'linux' && term !== 'dumb' && !term.startsWith('vt'))
    return ['truecolor', '24bit'].includes(colorTerm)
      ? works(check, `24-bit (COLORTERM=${colorTerm}); the pictures use 256, TERM=${term}`)
      : works(check, `256, TERM=${term}`);
  return {
    check,
    verdict: 'limited',
    found: `TERM=${term || 'unset'} has few colours or none`,
    fix: 'Use a terminal window with 256 colours, such as TERM=xterm-256color.',
  };
}

interface SessionFacts {
  /** Variables of the environment, null where unset. */
  readonly tmux: string | undefined;
  readonly ssh: string | undefined;
  readonly term: string | undefined;
}

/** What lies between the program and the eyes: tmux, ssh. */
export function checkSession({ tmux, ssh, term = '' }: SessionFacts): Finding {
  const check = 'session';
  if (ssh) {
    return {
      check,
      verdict: 'limited',
      found: `over ssh${tmux ? ', in tmux' : ''}`,
      fix: 'Pedals have to be plugged into this computer, not into yours; the picture lags by the way over the net. udev gives devices to whoever sits at the screen: over ssh, replace TAG+="uaccess" by GROUP="input", MODE="0660" in the rules and join that group.',
    };
  }
  if (tmux && !/^(tmux|screen)/.test(term)) {
    return {
      check,
      verdict: 'limited',
      found: `in tmux, but TERM=${term || 'unset'}`,
      fix: 'Put `set -g default-terminal tmux-256color` into ~/.tmux.conf and leave TERM alone.',
    };
  }
  return works(check, tmux ? 'in tmux' : 'at this computer');
}

/** @param failure why the data folder cannot be written, null where it can or could be made */
export function checkDataFolder(dataDir: string, failure: string | null): Finding {
  const check = 'data folder';
  if (failure === null) return works(check, dataDir);
  return {
    check,
    verdict: 'broken',
    found: `${dataDir}: ${failure}`,
    fix: 'Make it writable, or choose another with --data-dir: nothing can be kept.',
  };
}

export interface AccessFacts extends RuledDevice {
  /** True where this user may not open it. */
  readonly isBarred: boolean;
}

/** Linux lets in whom a udev rule names: the rules for exactly the devices found, with how to install them. */
export function checkAccess(devices: readonly AccessFacts[]): Finding {
  const check = 'udev rules';
  const barred = devices.filter(({ isBarred }) => isBarred);
  if (barred.length === 0)
    return works(check, 'not needed: every device opens (`doctor --udev-rules` prints them)');
  return {
    check,
    verdict: 'broken',
    found: `needed by ${barred.length} of ${devices.length} devices`,
    fix: [
      `These lines belong into ${UDEV_RULES_FILE}:`,
      ...udevRules(devices).map((line) => `  ${line}`),
      `  ebbline doctor --udev-rules | sudo tee ${UDEV_RULES_FILE}`,
      `  ${UDEV_RELOAD}`,
      'Then plug the devices in again.',
    ].join('\n'),
  };
}

/** What an operating system does with input devices that a program cannot ask it about; null where it can. */
export function platformNote(platform: NodeJS.Platform): Finding | null {
  if (platform === 'darwin') {
    return {
      check: 'macOS',
      verdict: 'note',
      found: 'it asks whether the terminal may monitor input; without that, pedals stay silent',
      fix: 'System Settings, Privacy & Security, Input Monitoring: switch your terminal on, then close and open it. Not tried on macOS.',
    };
  }
  if (platform === 'win32') {
    return {
      check: 'Windows',
      verdict: 'note',
      found: 'it gives no report descriptors: `rig setup` finds every axis by watching it move',
      fix: 'Use Windows Terminal, not the old console. A device that does not open is held by another program: close that. Not tried on Windows.',
    };
  }
  return null;
}
