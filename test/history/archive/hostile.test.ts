import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32, deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openHistory } from '../../../src/history/open-history.ts';
import { Problem } from '../../../src/problem.ts';
import { aNote, aPractice, aRep } from '../fixtures.ts';
import { inFolder, JOURNAL } from '../implementations.ts';
import { entriesOf, exported, imported, manifestOf, packed, patched, zipped } from './archives.ts';

/** A sound archive of two reps with a note, and the same taken apart. */
async function sound(folder: string): Promise<{ path: string; entries: Map<string, Buffer> }> {
  const history = openHistory(join(folder, 'source'), { drivers: [] });
  const practice = history.startPractice(aPractice());
  const id = history.addRep(practice, aRep());
  history.addRep(practice, aRep({ number: 2 }));
  history.addNote(aNote({ repId: id }));
  const path = join(folder, 'sound.zip');
  const bytes = Buffer.from('name: x\n');
  await exported(history, path, {
    files: [{ folder: 'targets', name: 'my-corner.yaml', bundled: false, bytes }],
  });
  history.close();
  return { path, entries: await entriesOf(path) };
}

/** The message with which an archive is refused; nothing may be left of it. */
async function refusal(path: string, folder: string): Promise<string> {
  const goal = join(folder, 'goal');
  try {
    await imported(path, goal, JOURNAL);
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    expect(existsSync(goal)).toBe(false);
    return (error as Problem).message;
  }
  return expect.unreachable('it was taken in');
}

type Change = (entries: Map<string, Buffer>) => void;

const edited =
  (name: string, edit: (text: string) => string): Change =>
  (entries) =>
    entries.set(name, Buffer.from(edit(entries.get(name)!.toString())));

/** Changes the first line of an entry as an object. */
const line = (name: string, change: (object: Record<string, unknown>) => void): Change =>
  edited(name, (text) => {
    const [first = '', ...rest] = text.split('\n');
    const object = JSON.parse(first) as Record<string, unknown>;
    change(object);
    return [JSON.stringify(object), ...rest].join('\n');
  });

const samples = (change: (samples: Record<string, never>) => void): Change =>
  line('reps.jsonl', (rep) => change(rep.samples as Record<string, never>));

const REFUSED: readonly [what: string, change: Change, message: RegExp][] = [
  ['a line that is no JSON', edited('reps.jsonl', (text) => `{${text}`), /no JSON/],
  ['bytes that are no UTF-8', (all) => all.set('notes.jsonl', Buffer.from([0xff, 10])), /no JSON/],
  ['a last line without an end', edited('reps.jsonl', (text) => text.trimEnd()), /no end/],
  [
    'fewer lines than promised',
    edited('reps.jsonl', (text) => text.split('\n').slice(1).join('\n')),
    /of note|1 lines/,
  ],
  ['an id twice', edited('reps.jsonl', (text) => `${text}${text.split('\n')[0]}\n`), /comes twice/],
  ['a practice that is not there', edited('practices.jsonl', () => ''), /0 lines/],
  [
    'a rep of no practice',
    line('reps.jsonl', (rep) => {
      rep.practice = 'x';
    }),
    /practice of rep .* is missing/,
  ],
  [
    'a note on no rep',
    line('notes.jsonl', (note) => {
      note.rep = 'x';
    }),
    /rep of note .* is missing/,
  ],
  [
    'a field nobody knows',
    line('reps.jsonl', (rep) => {
      rep.extra = 1;
    }),
    /"extra" that is not known/,
  ],
  [
    'a field that fouls prototypes',
    edited('reps.jsonl', (text) => text.replace('{', '{"__proto__":{"x":1},')),
    /"__proto__" that is not known/,
  ],
  [
    'a missing field',
    line('reps.jsonl', (rep) => {
      delete rep.feedback;
    }),
    /feedback is none of/,
  ],
  [
    'a word that is none',
    line('practices.jsonl', (one) => {
      one.source = 'sonar';
    }),
    /source is none of/,
  ],
  [
    'a time zone that is none',
    line('practices.jsonl', (one) => {
      (one.startedAt as { zone: string }).zone = 'Mars/North';
    }),
    /no time zone/,
  ],
  [
    'an instant beyond dates',
    line('practices.jsonl', (one) => {
      (one.startedAt as { utcMs: number }).utcMs = 9e15;
    }),
    /utcMs is no whole number/,
  ],
  [
    'a number out of range',
    edited('reps.jsonl', (text) => text.replace('"score":71.25', '"score":1e999')),
    /score is no number/,
  ],
  [
    'half a character',
    edited('practices.jsonl', (text) => text.replace('Kim', '\\ud800')),
    /well-formed/,
  ],
  [
    'an outcome without its parts',
    line('reps.jsonl', (rep) => {
      rep.outcomes = [{ kind: 'scored', version: 1, score: 5 }];
    }),
    /outcomes\[0\]\.parts/,
  ],
  [
    'a score version twice',
    line('reps.jsonl', (rep) => {
      const all = rep.outcomes as unknown[];
      rep.outcomes = [...all, ...all];
    }),
    /a version twice/,
  ],
  [
    'times that go back',
    samples((all: Record<string, unknown>) => {
      (all.brake as { stepTicks: number[] }).stepTicks = [0, 5, -6];
    }),
    /goes back/,
  ],
  [
    'times without values',
    samples((all: Record<string, unknown>) => {
      (all.brake as { quanta: number[] }).quanta = [1];
    }),
    /one value for each time/,
  ],
  [
    'samples that are no whole steps',
    samples((all: Record<string, unknown>) => {
      (all.brake as { quanta: number[] }).quanta = [0.5, 1, 2];
    }),
    /whole number of steps/,
  ],
  [
    'a value beyond the grid',
    samples((all: Record<string, unknown>) => {
      (all.brake as { quanta: number[] }).quanta = [2 ** 28, 1, 2];
    }),
    /whole number of steps/,
  ],
  ['an entry nobody knows', (all) => all.set('evil.exe', Buffer.from('x')), /which none has/],
  [
    'a file of a reserved name',
    (all) => all.set('profiles/targets/nul.yaml', Buffer.from('x')),
    /which none has/,
  ],
  [
    'a hidden file',
    (all) => all.set('profiles/targets/.x.yaml', Buffer.from('x')),
    /which none has/,
  ],
  [
    'a file that turns text around',
    (all) => all.set('profiles/targets/a\u202eb.yaml', Buffer.from('x')),
    /which none has/,
  ],
  [
    'a file in a folder of a folder',
    (all) => all.set('profiles/a/b/c.yaml', Buffer.from('x')),
    /which none has/,
  ],
  [
    'a huge file',
    (all) => all.set('profiles/targets/a.yaml', Buffer.alloc(300_000, 32)),
    /300000 bytes/,
  ],
  ['no reps at all', (all) => all.delete('reps.jsonl'), /does not list reps/],
];

test.each(REFUSED)('%s is refused, and nothing is left', (_, change, message) =>
  inFolder(async (folder) => {
    const { entries } = await sound(folder);
    change(entries);
    const path = join(folder, 'x.zip');
    await packed(path, entries);
    expect(await refusal(path, folder)).toMatch(message);
  }),
);

test('the sound archive itself is taken in, packed again as well', () =>
  inFolder(async (folder) => {
    const { path, entries } = await sound(folder);
    await packed(join(folder, 'again.zip'), entries);
    for (const [i, one] of [path, join(folder, 'again.zip')].entries()) {
      const { counts } = await imported(one, join(folder, `goal${i}`), JOURNAL);
      expect([counts.practice.added, counts.rep.added, counts.note.added]).toEqual([1, 2, 1]);
    }
  }));

test('a newer format is named, another manifest is refused', () =>
  inFolder(async (folder) => {
    const { entries } = await sound(folder);
    const path = join(folder, 'x.zip');
    await packed(path, entries, (manifest) => ({ ...manifest, format: 2, more: [] }));
    expect(await refusal(path, folder)).toBe('the archive has format 2, this program reads 1');
    for (const other of [null, [], { program: 'other' }, 7]) {
      await packed(path, entries, () => other);
      expect(await refusal(path, folder)).toMatch(/manifest is damaged/);
    }
    await packed(path, entries, (manifest) => ({
      ...manifest,
      entries: manifest.entries.slice(1),
    }));
    expect(await refusal(path, folder)).toMatch(/README.txt is not in the manifest/);
    await packed(path, entries, (manifest) => ({
      ...manifest,
      entries: [...manifest.entries, manifest.entries[0]],
    }));
    expect(await refusal(path, folder)).toMatch(/an entry twice/);
    const others = [...entries].filter(([name]) => name !== 'manifest.json');
    await zipped(path, others);
    expect(await refusal(path, folder)).toMatch(/no archive of ebbline/);
  }));

test('an entry that was changed after its check sum is refused', () =>
  inFolder(async (folder) => {
    const { entries } = await sound(folder);
    for (const name of [
      'reps.jsonl',
      'reps.csv',
      'README.txt',
      'profiles/targets/my-corner.yaml',
    ]) {
      const changed = new Map(entries);
      const bytes = Buffer.from(entries.get(name)!);
      bytes[bytes.length - 2] = bytes[bytes.length - 2] === 32 ? 33 : 32;
      changed.set(name, bytes);
      const path = join(folder, 'x.zip');
      await packed(path, changed, (manifest) => ({
        ...manifest,
        entries: manifestOf(entries).entries,
      }));
      expect(await refusal(path, folder)).toMatch(/check sum|no JSON/);
    }
  }));

test('paths that lead out of the folder are refused, whatever they are written with', () =>
  inFolder(async (folder) => {
    const { path } = await sound(folder);
    const bytes = readFileSync(path);
    const from = 'profiles/targets/my-corner.yaml';
    for (const to of [
      '../../../../../../tmp/evil.yaml',
      '/tmp/aaaaaaaaaaaaaaaaa/evil.yaml',
      'C:/aaaaaaaaaaaaaaaaaaaa/evil.yaml',
      'profiles\\targets\\my-corner.yaml',
      'profiles/targets/../corner.yaml',
    ]) {
      const evil = join(folder, 'evil.zip');
      patched(evil, bytes, from, to.slice(0, from.length).padEnd(from.length, 'x'));
      expect(await refusal(evil, folder)).toMatch(/damaged|which none has|manifest/);
    }
  }));

test('two entries of one name are refused', () =>
  inFolder(async (folder) => {
    const { entries } = await sound(folder);
    const path = join(folder, 'x.zip');
    await zipped(path, [...entries, ['reps.jsonl', Buffer.from('x')]]);
    expect(await refusal(path, folder)).toMatch(/two entries/);
  }));

test('an archive that unpacks to far more than it is, is refused before it is unpacked', () =>
  inFolder(async (folder) => {
    const { entries } = await sound(folder);
    entries.set('reps.csv', Buffer.alloc(80 * 2 ** 20));
    const path = join(folder, 'x.zip');
    await packed(path, entries);
    expect(readFileSync(path).length).toBeLessThan(200_000);
    expect(await refusal(path, folder)).toMatch(/would unpack to/);
  }));

/** A central directory by hand (APPNOTE.TXT 4.3.12, 4.3.16): entries that share their bytes, or lie about their size. */
function forged(names: readonly string[], plain: Buffer, saidBytes: number): Buffer {
  const data = deflateRawSync(plain);
  const header = (name: string, isCentral: boolean): Buffer => {
    const bytes = Buffer.alloc(isCentral ? 46 : 30);
    bytes.writeUInt32LE(isCentral ? 0x02014b50 : 0x04034b50, 0);
    const at = isCentral ? 6 : 4;
    bytes.writeUInt16LE(20, at);
    bytes.writeUInt16LE(8, at + 4);
    bytes.writeUInt32LE(crc32(plain), at + 10);
    bytes.writeUInt32LE(data.length, at + 14);
    bytes.writeUInt32LE(saidBytes, at + 18);
    bytes.writeUInt16LE(name.length, at + 22);
    return Buffer.concat([bytes, Buffer.from(name)]);
  };
  const local = Buffer.concat([header(names[0]!, false), data]);
  const central = Buffer.concat(names.map((name) => header(name, true)));
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(names.length, 8);
  end.writeUInt16LE(names.length, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(local.length, 16);
  return Buffer.concat([local, central, end]);
}

test('entries that share their bytes, and one that is longer than it says, are refused', () =>
  inFolder(async (folder) => {
    const path = join(folder, 'x.zip');
    const plain = Buffer.from('{"format":1,"program":"ebbline"}');
    writeFileSync(path, forged(['manifest.json', 'reps.jsonl'], plain, plain.length));
    expect(await refusal(path, folder)).toMatch(/overlap/);
    writeFileSync(path, forged(['manifest.json'], Buffer.alloc(1_000_000, 32), 100));
    expect(await refusal(path, folder)).toMatch(/damaged \(too many bytes/);
  }));

test('a file that ends anywhere, and one with any damage, is refused or means the same', () =>
  inFolder(async (folder) => {
    const { path } = await sound(folder);
    const bytes = readFileSync(path);
    const cut = fc.nat(bytes.length - 1).map((end) => bytes.subarray(0, end));
    const damaged = fc
      .tuple(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }))
      .map(([at, by]) => {
        const copy = Buffer.from(bytes);
        copy[at]! ^= by;
        return copy;
      });
    await fc.assert(
      fc.asyncProperty(fc.oneof(cut, damaged), (content) =>
        inFolder(async (own) => {
          const file = join(own, 'x.zip');
          writeFileSync(file, content);
          const report = await imported(file, join(own, 'goal'), JOURNAL).catch(
            (error: unknown) => {
              expect(error).toBeInstanceOf(Problem);
              expect(readdirSync(own)).toEqual(['x.zip']);
              return null;
            },
          );
          // a date in a header that nobody reads may be damaged, nothing else
          if (report !== null) expect(report.counts.rep.added).toBe(2);
        }),
      ),
      { numRuns: 60 },
    );
  }));
