import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PACKED_WHEEL, TWO_REPORTS } from '../reference/descriptors.ts';
import { runCommand } from './run-command.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'rig-decode-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function write(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

async function decode(...args: string[]) {
  const { code, stdout: out, stderr: err } = await runCommand(['rig', 'decode', ...args]);
  return { code, out, err };
}

const BRAKE = '05 01 09 04 A1 01 05 02 09 C5 15 00 26 FF 0F 75 0C 95 01 81 42 75 04 81 03 C0';

describe('rig decode --json', () => {
  test('prints fields and values under the promised names', async () => {
    const file = write('brake.hex', `${BRAKE} # one pedal\n`);
    const { code, out, err } = await decode('--descriptor', file, '--report', '34 02', '--json');
    expect([code, err]).toEqual([0, '']);
    const found = JSON.parse(out);
    expect(found.fields).toEqual([
      {
        report_id: 0,
        usage_page: 2,
        usage_id: 0xc5,
        usage_name: 'Brake',
        bit_offset: 0,
        bit_size: 12,
        logical_min: 0,
        logical_max: 4095,
        physical_min: 0,
        physical_max: 4095,
        unit: 0,
        unit_exponent: 0,
        flags: {
          variable: true,
          relative: false,
          wrap: false,
          non_linear: false,
          no_preferred: false,
          null_state: true,
          volatile: false,
        },
      },
    ]);
    expect(found.reports).toEqual([{ report_id: 0, values: [0x234] }]);
    expect(found.applications).toEqual([{ usage_page: 1, usage_id: 4, usage_name: 'Joystick' }]);
  });

  test('reads raw bytes and several reports', async () => {
    const file = write('wheel.bin', TWO_REPORTS);
    const { out } = await decode(
      ...['--descriptor', file, '--json'],
      ...['--report', '0x02,0x00,0x00,0x10,0x00,0x00,0x00', '--report', '01 00 00 00'],
    );
    const { reports, fields } = JSON.parse(out);
    expect(reports.map((r: { report_id: number }) => r.report_id)).toEqual([2, 1]);
    expect(reports[0].values.slice(-3)).toEqual([0, 16, 0]);
    expect(reports[1].values).toHaveLength(fields.length);
    expect(reports[1].values.slice(-4)).toEqual([null, null, null, null]);
  });
});

test('without --json: a table, one column per report', async () => {
  const file = write('table.bin', PACKED_WHEEL);
  const { out, code } = await decode('--descriptor', file, '--report', '7f5ccad457fb6435');
  expect(code).toBe(0);
  const lines = out.trimEnd().split('\n');
  expect(lines).toHaveLength(19);
  expect(lines[0]).toBe(
    'id  bit  bits  usage       logical   physical  unit  flags       report 1',
  );
  expect(lines[1]).toBe('-   0    14    X           0..16383  0..16383  -     -           7295');
  expect(lines[16]).toBe('-   28   4     Hat Switch  0..7      0..315    0x14  null state  -');
});

test('oddities go to stderr', async () => {
  const { code, err, out } = await decode('--descriptor', write('odd.hex', `${BRAKE} 00`));
  expect(code).toBe(0);
  expect(err).toContain('unknown tag 0');
  expect(out).not.toContain('unknown tag');
});

describe('refuses, and says what to do next,', () => {
  const cases: [string, number, string, () => string[]][] = [
    ['no descriptor', 2, 'no --descriptor', () => []],
    ['a stray word', 2, '"pedals.hex"', () => ['pedals.hex']],
    ['a missing file', 1, 'no such file', () => ['--descriptor', join(folder, 'none')]],
    ['a folder', 1, 'folder', () => ['--descriptor', folder]],
    ['an empty file', 1, 'empty', () => ['--descriptor', write('empty', '')]],
    ['odd digits', 1, 'odd number', () => ['--descriptor', write('odd', '05 0')]],
    ['words', 1, 'not hex', () => ['--descriptor', write('words', 'hello')]],
    [
      'a giant file',
      1,
      'longer than',
      () => ['--descriptor', write('big', ' '.repeat(2 ** 20 + 1))],
    ],
    [
      'bad report hex',
      1,
      '--report 1',
      () => ['--descriptor', write('b1', BRAKE), '--report', '0'],
    ],
    [
      'a short report',
      1,
      'has 1 byte and its fields need 2',
      () => ['--descriptor', write('b2', BRAKE), '--report', '00'],
    ],
    [
      'an unknown report',
      1,
      'report id 9',
      () => ['--descriptor', write('b3', TWO_REPORTS), '--report', '09 00'],
    ],
  ];
  test.each(cases)('%s', async (_name, code, message, args) => {
    const found = await decode(...args());
    expect([found.code, found.out]).toEqual([code, '']);
    expect(found.err).toContain(message);
    expect(found.err.split('\n')).toHaveLength(3);
  });
});
