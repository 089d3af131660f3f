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

const terminal = { interactive: true, columns: 80, rows: 24, term: 'xterm-256color' };
const failure = { found: 'libusb-1.0 is missing', fix: 'sudo apt install libusb-1.0-0' };

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
];

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
});
