import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { report } from '../../src/commands/report.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { fakeContext } from './fake-context.ts';
import { type Ran, runCommand } from './run-command.ts';

const folder = temporaryFolder('report');
const data = join(folder, 'data');
const ran = (...argv: string[]): Promise<Ran> => runCommand([...argv, '--data-dir', data]);
const file = (name: string): string => join(folder, name);

interface Phase {
  readonly average_error_level: number;
  readonly spread_level: number;
  readonly cause: { readonly kind: string } | null;
}

interface Block {
  readonly target_id: string;
  readonly not_drawn: string | null;
  readonly median_score: number;
  readonly median_release_error_level: number;
  readonly spread_level: number;
  readonly sentence: string;
  readonly reps: readonly {
    readonly number: number;
    readonly score: number;
    readonly is_drawn: boolean;
  }[];
  readonly along_from_turn_in_m: readonly number[] | null;
  readonly diagnosis: { readonly phases: readonly Phase[] };
}

interface Review {
  readonly practice: number;
  readonly blocks: readonly Block[];
  readonly targets: readonly { readonly target_id: string }[];
  readonly notes: readonly { readonly about: string; readonly text: string }[];
}

async function reviewOf(name: string, ...more: string[]): Promise<Review> {
  const { code, stdout, stderr } = await ran('report', name, '--json', ...more);
  expect(stderr).toBe('');
  expect(code).toBe(0);
  return JSON.parse(stdout);
}

const drills: Record<
  string,
  { readonly block: Record<string, unknown>; readonly reps: unknown[] }
> = {};
const drill = async (name: string, ...subject: string[]): Promise<void> => {
  const { stdout } = await ran(
    'drill',
    ...subject,
    ...['--source', 'virtual:club', '--headless', '--seed', '1', '--reps', '5', '--json'],
  );
  drills[name] = JSON.parse(stdout);
};

beforeAll(async () => {
  await drill('time', 'hairpin');
  await drill('live', 'kiln-hairpin', '--car', 'gt');
  await ran('note', 'add', 'wet <b>there</b>', '--rep', '2', '--driver', 'virtual driver, club');
});

describe('a practice', () => {
  test('is what its drill said of it, over time', async () => {
    const { practice, blocks, targets } = await reviewOf('1');
    expect(practice).toBe(1);
    expect(targets.map(({ target_id }) => target_id)).toEqual(['hairpin']);
    expect(blocks.length).toBe(1);
    expectSame(blocks[0]!, drills.time!);
    expect(blocks[0]!.along_from_turn_in_m).toBeNull();
  });

  test('and with the live car, over distance', async () => {
    const { practice, blocks } = await reviewOf('last');
    expect(practice).toBe(2);
    expectSame(blocks[0]!, drills.live!);
    const along = blocks[0]!.along_from_turn_in_m!;
    expect(along.every((place, i) => i === 0 || place >= along[i - 1]!)).toBe(true);
    // the zone begins before turn-in and ends behind it
    expect(along[0]).toBeLessThan(-20);
    expect(along.at(-1)).toBeGreaterThan(0);
  });

  test('has the notes on its reps', async () => {
    const { notes } = await reviewOf('2');
    expect(notes).toMatchObject([{ text: 'wet <b>there</b>' }]);
    expect(notes[0]!.about).toMatch(/^rep 2, kiln-hairpin, /);
    // a note on a rep belongs to the practice of that rep alone
    expect((await reviewOf('1')).notes).toEqual([]);
  });

  test('whose target was changed since keeps its reps and says why there are no pictures', async () => {
    const own = join(data, 'targets', 'hairpin.yaml');
    mkdirSync(join(data, 'targets'));
    copyFileSync('profiles/targets/fast-sweeper.yaml', own);
    try {
      const [block] = (await reviewOf('1')).blocks;
      expect(block!.not_drawn).toMatch(/target hairpin has been changed since/);
      expect(block!.reps.length).toBe(5);
      await ran('report', '1', '--out', file('changed.html'));
      expect(readFileSync(file('changed.html'), 'utf8')).toMatch(
        /No pictures: target hairpin has been changed since/,
      );
    } finally {
      rmSync(join(data, 'targets'), { recursive: true });
    }
  });

  test('on a target drilled by its path is drawn once its file is named, and says so until then', async () => {
    const apart = join(folder, 'apart');
    const path = file('from-the-coach.yaml');
    copyFileSync('profiles/targets/fast-sweeper.yaml', path);
    const here = ['--data-dir', apart];
    const virtual = ['--source', 'virtual:club', '--headless', '--seed', '1'];
    await runCommand(['drill', '--target', path, ...virtual, '--reps', '3', ...here]);
    const block = async (...more: string[]): Promise<Block> =>
      JSON.parse((await runCommand(['report', 'last', '--json', ...more, ...here])).stdout)
        .blocks[0];
    expect((await block()).not_drawn).toBe(
      'there is no target "from-the-coach" in the usual folders: name its file with --target',
    );
    const drawn = await block('--target', path);
    expect(drawn.not_drawn).toBeNull();
    expect(drawn.reps.map(({ is_drawn }) => is_drawn)).toEqual([true, true, true]);
    // over weeks as well; a spread curve needs ten hidden reps of one practice
    await runCommand(['drill', '--target', path, ...virtual, '--reps', '24', ...here]);
    const curve = async (...more: string[]): Promise<unknown> =>
      JSON.parse((await runCommand(['report', '--weeks', '1', '--json', ...more, ...here])).stdout)
        .targets[0].spread_curve;
    expect(await curve()).toBeNull();
    const known = await curve('--target', path);
    expect(known).not.toBeNull();
    // a changed file is another target, whatever its name
    writeFileSync(path, readFileSync(path, 'utf8').replace(/^(peak_level:) [\d.]+/m, '$1 0.9'));
    expect((await block('--target', path)).not_drawn).toMatch(/has been changed since/);
    // how far reps differ was worked out on the target they were driven on, and stays true of them
    expect(await curve()).toEqual(known);
  });

  /** The numbers of a drill's own summary. */
  function expectSame(
    block: Block,
    { block: summary, reps }: { readonly block: Record<string, unknown>; readonly reps: unknown[] },
  ): void {
    expect(block.not_drawn).toBeNull();
    expect(block.reps.length).toBe(reps.length);
    expect(block.reps.every(({ is_drawn }) => is_drawn)).toBe(true);
    expect(block.sentence).toBe(summary.sentence);
    expect(block.median_score).toBeCloseTo(summary.median_score as number, 9);
    // kept samples are rounded to the resolution of the sensor
    expect(block.spread_level).toBeCloseTo(summary.spread_level as number, 3);
    const { phases } = summary.diagnosis as Block['diagnosis'];
    expect(block.diagnosis.phases.length).toBe(4);
    block.diagnosis.phases.forEach((phase, i) => {
      expect(phase.average_error_level).toBeCloseTo(phases[i]!.average_error_level, 3);
      expect(phase.spread_level).toBeCloseTo(phases[i]!.spread_level, 3);
      expect(phase.cause?.kind).toBe(phases[i]!.cause?.kind);
    });
  }
});

describe('files', () => {
  test('a page and its pictures', async () => {
    const page = file('review.html');
    const { code, stdout, stderr } = await ran('report', '1', '--out', page, '--svg', file('pics'));
    expect(stdout).toBe('');
    expect(code).toBe(0);
    expect(stderr).toContain(`Written to ${page}.`);
    const names = readdirSync(file('pics')).toSorted();
    expect(names).toEqual(['block-1-reps.svg', 'block-1-spread.svg', 'block-1-wheel.svg']);
    const html = readFileSync(page, 'utf8');
    expect(html).toMatch(/^<!doctype html>/);
    for (const name of names)
      expect(readFileSync(join(file('pics'), name), 'utf8')).toMatch(/^<\?xml version="1.0"/);
  });

  test('are never written over', async () => {
    writeFileSync(file('mine.html'), 'mine');
    const { code, stderr } = await ran('report', '1', '--out', file('mine.html'));
    expect(code).toBe(1);
    expect(stderr).toContain('the file is there already');
    expect(readFileSync(file('mine.html'), 'utf8')).toBe('mine');
    const again = await ran('report', '1', '--svg', file('mine.html'));
    expect(again.code).toBe(1);
    expect(again.stderr).toContain('the folder cannot be made');
  });
});

describe('weeks', () => {
  test('of a corner and of a target', async () => {
    const weeks = async (name: string): Promise<Review> =>
      JSON.parse((await ran('report', '--weeks', '2', name, '--json')).stdout);
    expect((await weeks('kiln-hairpin')).targets.map(({ target_id }) => target_id)).toEqual([
      'gt/kiln-hairpin/qualifying',
    ]);
    expect((await weeks('hairpin')).targets.map(({ target_id }) => target_id)).toEqual(['hairpin']);
    const { code } = await ran('report', '--weeks', '2', '--out', file('weeks.html'));
    expect(code).toBe(0);
    expect(readFileSync(file('weeks.html'), 'utf8')).toContain('2 weeks up to');
  });

  test('without reps say so', async () => {
    const later = { utcMs: Date.parse('2099-01-01'), zone: 'UTC', offsetMin: 0 };
    const input = { positionals: [], values: { weeks: '2', json: true } };
    await expect(report(input, fakeContext(data), later)).rejects.toThrow(
      /no reps in the last 2 weeks/,
    );
  });
});

describe('what cannot be done says what to do', () => {
  test.each([
    [['report', '--out', 'x.html'], 2, /no practice named\n.*last\. The newest: 2 on \d{4}-/],
    [
      ['report', 'yesterday', '--json'],
      2,
      /"yesterday" names no practice\n.*The newest: 2 on .* --weeks 10 yesterday\.\n/,
    ],
    [['report', '99', '--json'], 1, /there is no practice 99\n.*The newest: 2 on /],
    [['report', '2001-01-01', '--json'], 1, /no practice on 2001-01-01\n.*The newest: 2 on /],
    [['report', 'last'], 2, /nothing to write\n.*--out/],
    [['report', '1', '2', '--json'], 2, /it takes one name/],
    [['report', '--weeks', '0', '--json'], 2, /--weeks: "0" is not possible here/],
    [['report', '--weeks', '2', 'hairpn', '--json'], 1, /Did you mean hairpin\?/],
    [['report', 'last', '--driver', 'Nobody', '--json'], 1, /of driver "Nobody"/],
    [['report', '--weeks', '2', '--driver', 'Nobody', '--json'], 1, /of driver "Nobody"/],
  ])('%j', async (argv, code, words) => {
    const told = await ran(...argv);
    expect(told.stderr).toMatch(words);
    expect(told.code).toBe(code);
    expect(told.stdout).toBe('');
  });

  test('a day with several practices', async () => {
    const { stdout } = await ran('report', '1', '--json');
    const [day] = (JSON.parse(stdout).started_at_local as string).split(' ');
    const { code, stderr } = await ran('report', day!, '--json');
    // around midnight the two may lie on two days
    if (code === 0) return;
    expect(stderr).toMatch(/there were 2 practices on .*\n.*Say which: 1, 2\./);
  });

  test('without a history', async () => {
    const { code, stderr } = await runCommand([
      ...['report', 'last', '--json', '--data-dir', file('none')],
    ]);
    expect(code).toBe(1);
    expect(stderr).toMatch(/there is no practice yet\n.*ebbline drill/);
  });
});
