import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { aNote, aPractice, aRep } from '../history/fixtures.ts';
import { inFolder } from '../history/implementations.ts';
import { runCommand } from './run-command.ts';

function driven(folder: string, driver: string): void {
  const history = openHistory(folder);
  const practice = history.startPractice(aPractice({ driver }));
  const id = history.addRep(practice, aRep());
  history.addNote(aNote({ driver, repId: id }));
  history.close();
}

test('a history with its files goes from one folder to another, once', () =>
  inFolder(async (folder) => {
    const [a, b, zip] = [join(folder, 'a'), join(folder, 'b'), join(folder, 'x.zip')];
    driven(a, 'Kim');
    mkdirSync(join(a, 'targets'));
    writeFileSync(join(a, 'targets', 'my-own.yaml'), '# no target, but mine\n');
    // an own file hides the bundled one of its id
    writeFileSync(join(a, 'targets', 'hairpin.yaml'), 'name: mine\n');
    const out = await runCommand(['export', '--out', zip, '--data-dir', a]);
    expect(out).toMatchObject({ code: 0, stderr: '' });
    // two own targets, the car and the corner that the rep refers to
    expect(out.stdout).toBe(
      `Wrote 1 practice, 1 rep, 1 note, 4 files to ${zip}.\nDrivers: "Kim".\n`,
    );
    const dry = await runCommand(['import', zip, '--dry-run', '--data-dir', b]);
    expect(dry.code).toBe(0);
    expect(dry.stdout).toContain('Would take in 1 practice, 1 rep, 1 note, 2 files.');
    expect(dry.stdout).toMatch(/: "Kim", exported \d{4}-\d\d-\d\d \d\d:\d\d UTC\.\n/);
    expect(readdirSync(folder)).not.toContain('b');
    const first = await runCommand(['import', zip, '--data-dir', b]);
    expect(first.stdout).toContain('Took in 1 practice, 1 rep, 1 note, 2 files.');
    expect(first.stdout).toContain('Here already: 2 files.');
    expect(readdirSync(join(b, 'targets'))).toEqual(['hairpin.yaml', 'my-own.yaml']);
    expect(readFileSync(join(b, 'targets', 'hairpin.yaml'), 'utf8')).toBe('name: mine\n');
    const second = await runCommand(['import', zip, '--data-dir', b]);
    expect(second.code).toBe(0);
    expect(second.stdout).toContain('Nothing in it is new here.');
    writeFileSync(join(b, 'targets', 'my-own.yaml'), 'changed here\n');
    const third = await runCommand(['import', zip, '--json', '--data-dir', b]);
    expect(third.code).toBe(1);
    expect(JSON.parse(third.stdout)).toMatchObject({
      drivers: ['Kim'],
      reps: { added_count: 0, known_count: 1 },
      files: { added_count: 0, known_count: 3, conflicting_count: 1 },
      conflicts: [{ kind: 'file', id: 'targets/my-own.yaml' }],
    });
    expect(readFileSync(join(b, 'targets', 'my-own.yaml'), 'utf8')).toBe('changed here\n');
  }));

test('a spreadsheet alone: UTF-8 with its mark, a row for each rep, names that start no formula', () =>
  inFolder(async (folder) => {
    driven(folder, '=cmd|x');
    const csv = join(folder, 'x.csv');
    const ran = await runCommand(['export', '--csv', csv, '--data-dir', folder]);
    expect(ran).toMatchObject({ code: 0, stderr: '' });
    const [header = '', row = '', end] = readFileSync(csv, 'utf8').split('\r\n');
    expect(header.startsWith('\ufeffdriver,local_date,')).toBe(true);
    expect(row).toMatch(/^'=cmd\|x,2026-11-25,2026-11-25 17:30:00.000,/);
    expect(row.split(',')).toHaveLength(header.split(',').length);
    expect(end).toBe('');
  }));

test('names reach the terminal without what moves it, and the file as they are', () =>
  inFolder(async (folder) => {
    driven(join(folder, 'a'), 'Kim\u001b[2J');
    const zip = join(folder, 'x.zip');
    const out = await runCommand(['export', '--out', zip, '--data-dir', join(folder, 'a')]);
    const taken = await runCommand(['import', zip, '--data-dir', join(folder, 'b')]);
    expect(out.stdout + taken.stdout).not.toContain('\u001b');
    const history = openHistory(join(folder, 'b'));
    expect(history.practices()[0]?.driver).toBe('Kim\u001b[2J');
    history.close();
  }));

test('wrong usage is exit code 2, nothing to do is 1, and neither leaves a file', () =>
  inFolder(async (folder) => {
    const zip = join(folder, 'x.zip');
    const own = join(folder, 'a');
    const codeOf = async (...argv: string[]): Promise<number> =>
      (await runCommand([...argv, '--data-dir', own])).code;
    expect(await codeOf('export', '--out', zip)).toBe(1);
    driven(own, 'Kim');
    expect(await codeOf('export')).toBe(2);
    expect(await codeOf('export', '--out', zip, '--csv', zip)).toBe(2);
    expect(await codeOf('export', 'x', '--out', zip)).toBe(2);
    expect(await codeOf('export', '--out', zip, '--since', 'friday')).toBe(2);
    expect(await codeOf('export', '--out', zip, '--driver', ' ')).toBe(2);
    expect(await codeOf('export', '--out', zip, '--driver', 'Bo')).toBe(1);
    expect(await codeOf('export', '--out', zip, '--since', '2030-01-01')).toBe(1);
    expect(await codeOf('import')).toBe(2);
    expect(await codeOf('import', zip)).toBe(1);
    expect(await codeOf('import', folder)).toBe(1);
    expect(readdirSync(folder)).toEqual(['a']);
  }));

// heads of files: SQLite's file format 1.3.1, a table as RFC 4180 has it, a profile of ours
test.each([
  [
    'log.csv',
    'time [s];brake [bar]\n0;0\n0.01;3\n',
    /it is a table \(CSV\).*ebbline trace import /s,
  ],
  ['my.yaml', '# a corner\nname: Mine\n', /a file of text with keys.*ebbline drill --target /s],
  ['history.sqlite', 'SQLite format 3\0\u0010', /it is a history itself.*--data-dir/s],
  ['nothing.zip', '', /it is empty/],
  [
    'picture.zip',
    '\u0089PNG\r\n\u001a\n\0',
    /not an archive of `ebbline export`\n.*ebbline export --out/s,
  ],
  ['cut.zip', 'PK\u0003\u0004\u0014\0', /not whole: its end is missing/],
])('import says of %s what it is not, and where it belongs', (name, content, told) =>
  inFolder(async (folder) => {
    const path = join(folder, name);
    writeFileSync(path, content, 'latin1');
    const { code, stderr } = await runCommand(['import', path, '--data-dir', join(folder, 'd')]);
    expect(code).toBe(1);
    expect(stderr).toMatch(told);
    expect(stderr).not.toMatch(/central directory|zip file/i);
  }),
);

test.each([
  [['trace', 'import'], 'a log in CSV'],
  [['score', '--target', 'hairpin', '--trace'], 'a rep in CSV'],
  [['target', 'show'], 'a target file'],
])('%j says of an archive where it belongs', (words, wanted) =>
  inFolder(async (folder) => {
    const path = join(folder, 'kim.zip');
    writeFileSync(path, 'PK\u0003\u0004\u0014\0', 'latin1');
    const { code, stderr } = await runCommand([...words, path, '--data-dir', folder]);
    expect(code).not.toBe(0);
    expect(stderr).toContain(`this is not ${wanted}: it is a ZIP file`);
    expect(stderr).toContain(`\`ebbline import ${path}\``);
  }),
);

test('a table in the place of a profile is told as one', () =>
  inFolder(async (folder) => {
    const path = join(folder, 'log.csv');
    writeFileSync(path, 'time_s,level\n0,0\n');
    const { stderr } = await runCommand(['drill', '--headless', '--target', path]);
    expect(stderr).toContain('this is not a target file: it is a table (CSV)');
  }));
