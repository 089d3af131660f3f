import { describe, expect, test } from 'vitest';
import {
  checkCharacters,
  checkDevices,
  checkHidLibrary,
  checkHistory,
  checkNode,
  checkRig,
  checkTerminal,
  type Finding,
  findingLines,
} from '../../src/commands/doctor-checks.ts';
import {
  type AccessFacts,
  checkAccess,
  checkColours,
  checkDataFolder,
  checkSession,
  platformNote,
} from '../../src/commands/doctor-platform.ts';
import { checkSound } from '../../src/commands/doctor-sound.ts';
import type { PlayerSearch } from '../../src/sound/find-player.ts';
import { identity } from '../input/report-batches.ts';
import { runCommand } from './run-command.ts';

const terminal = { interactive: true, columns: 80, rows: 24, term: 'xterm-256color' };
const failure = { found: 'libusb-1.0 is missing', fix: 'sudo apt install libusb-1.0-0' };

const session = { tmux: undefined, ssh: undefined, term: 'xterm-256color' };
const model = (productId: number, isBarred: boolean, name = 'pedals'): AccessFacts => ({
  identity: identity(productId),
  name,
  isBarred,
});

const player: PlayerSearch = {
  found: { command: { program: 'aplay', args: [], latencyUs: null }, latencyS: 0.0634 },
  refused: ['pacat'],
};
const noPlayer: PlayerSearch = { found: null, refused: [] };

/** Each check with a world in which all is well and worlds in which it must say so. */
const cases: readonly (readonly [string, Finding | undefined, Finding['verdict']])[] = [
  ['Node 20.19', checkNode('v20.19.0'), 'works'],
  ['Node 22.1', checkNode('v22.1.0'), 'works'],
  ['Node 20.18', checkNode('v20.18.3'), 'broken'],
  ['Node 18', checkNode('v18.20.0'), 'broken'],
  ['a terminal', checkTerminal(terminal), 'works'],
  ['a pipe', checkTerminal({ ...terminal, interactive: false }), 'limited'],
  ['a dumb terminal', checkTerminal({ ...terminal, term: 'dumb' }), 'limited'],
  ['a small terminal', checkTerminal({ ...terminal, columns: 79 }), 'limited'],
  ['a low terminal', checkTerminal({ ...terminal, rows: 23 }), 'limited'],
  ['UTF-8', checkCharacters(true), 'works'],
  ['a plain locale', checkCharacters(false), 'limited'],
  ['a HID library', checkHidLibrary(null), 'works'],
  ['no HID library', checkHidLibrary(failure), 'broken'],
  ['nothing to look with', checkDevices(null)[0], 'limited'],
  ['no device', checkDevices([])[0], 'limited'],
  ['a device', checkDevices([{ name: 'pedals', refusal: null }])[0], 'works'],
  ['a locked device', checkDevices([{ name: 'pedals', refusal: failure }])[0], 'broken'],
  ['a rig', checkRig(true), 'works'],
  ['no rig', checkRig(false), 'limited'],
  ['a store', checkHistory({ label: 'SQLite', journal: false }), 'works'],
  ['a journal', checkHistory({ label: 'journal', journal: true }), 'limited'],
  ['a damaged store', checkHistory(failure), 'broken'],
  ['256 colours', checkColours({ wanted: true, term: 'tmux-256color' }), 'works'],
  ['no colours by choice', checkColours({ wanted: false, term: 'xterm' }), 'works'],
  ['the Linux console', checkColours({ wanted: true, term: 'linux' }), 'limited'],
  ['a terminal without a name', checkColours({ wanted: true, term: undefined }), 'limited'],
  ['a window here', checkSession(session), 'works'],
  ['tmux', checkSession({ ...session, tmux: '/tmp/tmux', term: 'tmux-256color' }), 'works'],
  ['tmux under another name', checkSession({ ...session, tmux: '/tmp/tmux' }), 'limited'],
  ['ssh', checkSession({ ...session, ssh: '192.0.2.1 50000 192.0.2.2 22' }), 'limited'],
  ['a data folder', checkDataFolder('/data', null), 'works'],
  ['a locked data folder', checkDataFolder('/data', 'it is not writable'), 'broken'],
  ['devices that open', checkAccess([model(1, false)]), 'works'],
  ['a device that is barred', checkAccess([model(1, false), model(2, true)]), 'broken'],
  ['a player', checkSound(player), 'works'],
  ['no player', checkSound(noPlayer, 'linux'), 'limited'],
  ['no player elsewhere', checkSound(noPlayer, 'win32'), 'limited'],
  ['a player without a card', checkSound({ found: null, refused: ['aplay'] }), 'limited'],
  ['macOS', platformNote('darwin') ?? undefined, 'note'],
  ['Windows', platformNote('win32') ?? undefined, 'note'],
];

test.each(['truecolor', '24bit'])(
  'a terminal with COLORTERM=%s has more colours than are used',
  (colorTerm) => {
    const { found } = checkColours({ wanted: true, term: 'xterm-256color', colorTerm });
    expect(found).toBe(
      `24-bit (COLORTERM=${colorTerm}); the pictures use 256, TERM=xterm-256color`,
    );
    expect(checkColours({ wanted: true, term: 'xterm', colorTerm: 'yes' }).found).toBe(
      '256, TERM=xterm',
    );
  },
);

describe('doctor', () => {
  test.each(cases)('%s', (_, finding, verdict) => {
    expect(finding?.verdict).toBe(verdict);
  });

  test.each(cases.filter(([, , verdict]) => verdict !== 'works'))(
    '%s comes with a fix',
    (_, finding) => {
      expect(finding?.fix).toMatch(/\w/);
    },
  );

  test('prints one line a finding and its fix below', () => {
    expect(findingLines([checkNode('v18.0.0'), checkRig(true)])).toEqual([
      'broken   Node  v18.0.0',
      '               Install Node 20.19 or later.',
      'works    rig   set up',
    ]);
  });

  test('says which player sounds, and how late', () => {
    expect(checkSound(player).found).toBe('`drill --sound` plays by aplay, heard 63 ms late');
  });

  test('says how to get a player where there is none, and not where one is there', () => {
    expect(checkSound(noPlayer, 'linux').fix).toMatch(/apt install pulseaudio-utils.*alsa-utils/);
    expect(checkSound(noPlayer, 'darwin').fix).toMatch(/Install SoX/);
    const silent = checkSound({ found: null, refused: ['pacat', 'aplay'] }, 'linux');
    expect(silent.found).toBe('installed, but playing nothing: pacat, aplay');
    expect(silent.fix).not.toMatch(/install/);
  });

  test('has nothing to note on Linux, which can be asked', () => {
    expect(platformNote('linux')).toBeNull();
  });

  test('gives rules for exactly the devices found, the file, and how to install it', () => {
    const { fix } = checkAccess([model(0x7e01, true, 'Three pedals'), model(0x7e02, false)]);
    expect(fix?.split('\n')).toEqual([
      'These lines belong into /etc/udev/rules.d/70-ebbline.rules:',
      '  # Three pedals',
      '  KERNEL=="hidraw*", ATTRS{idVendor}=="f055", ATTRS{idProduct}=="7e01", TAG+="uaccess"',
      '  # pedals',
      '  KERNEL=="hidraw*", ATTRS{idVendor}=="f055", ATTRS{idProduct}=="7e02", TAG+="uaccess"',
      '  ebbline doctor --udev-rules | sudo tee /etc/udev/rules.d/70-ebbline.rules',
      '  sudo udevadm control --reload-rules && sudo udevadm trigger',
      'Then plug the devices in again.',
    ]);
  });

  test('folds words at 80 columns, and leaves a line that is to be copied whole', () => {
    const lines = findingLines([
      checkAccess([model(1, true)]),
      checkSession({ ...session, ssh: 'yes' }),
      platformNote('darwin')!,
      platformNote('win32')!,
    ]);
    const rule = lines.filter((line) => line.startsWith('  KERNEL'));
    expect(rule).toHaveLength(1);
    expect(rule[0]).toMatch(/uaccess"$/);
    const long = lines.filter((line) => line.length > 80 && !line.startsWith('  '));
    expect(long.filter((line) => !/^(note|limited)/.test(line))).toEqual([]);
  });

  test('answers as JSON with one finding a check', async () => {
    const { stdout, code } = await runCommand(['doctor', '--json']);
    const { findings } = JSON.parse(stdout) as { findings: Finding[] };
    const names = findings.map(({ check }) => check);
    for (const name of [
      'Node',
      'terminal',
      'characters',
      'colours',
      'session',
      'HID library',
      'sound',
    ])
      expect(names.filter((one) => one === name)).toHaveLength(1);
    expect(names).toContain('data folder');
    expect(names).toContain('history');
    expect(code).toBe(findings.some(({ verdict }) => verdict === 'broken') ? 1 : 0);
  });
});
