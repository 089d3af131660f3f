import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { from, NEVER } from 'rxjs';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { ANSWERING, answerSchemaOf } from '../../../src/commands/answers/answers.ts';
import { rigCheck } from '../../../src/commands/rig-check.ts';
import { rigList } from '../../../src/commands/rig-list.ts';
import { zonedInstant } from '../../../src/consistency/zoned-instant.ts';
import { selfRatingText } from '../../../src/drill/self-rating.ts';
import { openHistory } from '../../../src/history/open-history.ts';
import type { NewRep } from '../../../src/history/store.ts';
import type { Rig } from '../../../src/input/rig/rig.ts';
import { csvOf as cornerCsv, derivedOf } from '../../corner/fit/logged-corner.ts';
import { aPractice, aRep, aScore, EVENING_MS } from '../../history/fixtures.ts';
import { batchOf, deviceOf, identity, word } from '../../input/report-batches.ts';
import { calibration, WORD } from '../../input/rig/calibration.ts';
import { NAMED_PEDALS } from '../../reference/descriptors.ts';
import { temporaryFolder } from '../../temporary-folder.ts';
import { csvOf, drive } from '../../trace/log/driven-log.ts';
import { variedLog } from '../../trace/log/varied-log.ts';
import { fakeContext } from '../fake-context.ts';
import { runCommand } from '../run-command.ts';

const folder = temporaryFolder('answers');
const empty = temporaryFolder('answers-empty');
const other = temporaryFolder('answers-other');
const live = temporaryFolder('answers-live');
// the evening after the invented practices, whenever the test runs
vi.useFakeTimers({ toFake: ['Date'], now: Date.UTC(2026, 10, 26, 18) });

afterAll(() => {
  vi.useRealTimers();
});
const inFolder = (name: string): string => join(folder, name);

const ajv = new Ajv2020({ strict: true, allErrors: true });
const validators = new Map<string, ValidateFunction>();
const answered = new Set<string>();

beforeAll(async () => {
  for (const name of ANSWERING) validators.set(name, ajv.compile((await answerSchemaOf(name))!));
});

/** Holds an answer against the schema of its command. */
function holds(name: string, stdout: string): Record<string, unknown> {
  const lines = stdout.trimEnd().split('\n');
  const answer = JSON.parse(lines.at(-1)!);
  const validate = validators.get(name)!;
  validate(answer);
  expect(
    (validate.errors ?? []).map(
      (one) => `${one.instancePath} ${one.message} ${JSON.stringify(one.params)}`,
    ),
  ).toEqual([]);
  answered.add(name);
  return answer;
}

/** Runs a command with --json and holds its answer against its schema. */
async function asked(argv: readonly string[], dataDir = folder) {
  const { stdout, stderr } = await runCommand([...argv, '--json', '--data-dir', dataDir]);
  const name = ANSWERING.find((one) => argv.join(' ').startsWith(one));
  expect(stdout, stderr).not.toBe('');
  return holds(name!, stdout);
}

const TARGET = `name: Logged corner
corner_type: test
domain: time
rise: { duration_s: 0.22 }
peak_level: 0.75
hold_s: 0.48
release: { duration_s: 1.5, shape: power-law, exponent: 1.3 }
full_scale: { pressure_bar: 80 }
`;
const ERRORS = [0.02, -0.02, 0.01, -0.01, 0];

const PLAN = `name: Short
zones: [{ target: hairpin }, { corner: kiln-hairpin, car: gt }]
first_of_day_reps: 0
warm_up_reps: 0
blocks: [{ reps: 2, order: serial, vary: { level_factor: [0.9, 1.1] } }]
`;

const EVENT = `name: Two corners
date: 2027-04-10
car: prototype
sessions: [{ session: qualifying, variant: qualifying }]
zones: [{ corner: kiln-hairpin, to_next_m: 540 }, { corner: coil-bend, to_next_s: 9 }]
`;

/** Two practices a week, each of hidden reps that come closer to the target and to each other. */
function practiseForWeeks(dir: string): void {
  const history = openHistory(dir);
  for (const driver of ['Kim', 'Lou'])
    for (let practice = 0; practice < 24; practice++) {
      const at = zonedInstant(EVENING_MS - (24 - practice) * 3.5 * 86_400_000, 'Europe/Berlin');
      const id = history.startPractice(aPractice({ driver, startedAt: at }));
      for (let i = 0; i < 20; i++) history.addRep(id, { ...wornIn(practice, i), at });
    }
  history.close();
}

/** No two alike, and always the same. */
function wornIn(practice: number, i: number): NewRep {
  const wide = 0.01 + 0.04 * Math.exp(-practice / 8);
  const swing = Math.sin(12.9898 * (20 * practice + i + 1));
  return aRep({
    number: i + 1,
    feedback: 'hidden',
    selfRating: selfRatingText({
      timing: swing > 0 ? 'late' : 'early',
      amount: swing > 0 ? 'heavy' : 'light',
    }),
    outcome: aScore({
      releaseErrorLevel: wide * (1.5 + 0.3 * swing),
      averageErrorLevel: wide * swing,
      peakError: 4 * wide * swing,
      keyPointErrorsS: {
        startOfRelease: 2 * wide * swing,
        halfRelease: null,
        finalRelease: null,
        brakeOff: 0.1,
      },
    }),
  });
}

function writeFiles(): void {
  writeFileSync(inFolder('short.yaml'), PLAN);
  writeFileSync(inFolder('two-corners.yaml'), EVENT);
  writeFileSync(inFolder('logged.yaml'), TARGET);
  writeFileSync(inFolder('bad.yaml'), 'name: Bad\nradius: 3\n');
  const hairpin = derivedOf('kiln-hairpin', 'gt');
  writeFileSync(inFolder('fitted.csv'), cornerCsv([hairpin, hairpin]));
  writeFileSync(inFolder('bare.csv'), cornerCsv([hairpin], { channels: [] }));
  writeFileSync(inFolder('driven.csv'), csvOf(drive()));
  writeFileSync(
    inFolder('friday.csv'),
    variedLog({
      laps: 5,
      timingS: (lap) => 0.15 + ERRORS[lap]!,
      rate: () => 1,
      amount: (lap) => 0.9 * (1 + ERRORS[(lap + 1) % 5]!),
    }),
  );
  const level = (s: number): number =>
    s < 0.5 ? 0 : s < 0.75 ? 3 * (s - 0.5) : Math.max(0, 1.25 - s / 2.4);
  const rows = Array.from({ length: 400 }, (_, i) => `${i / 100},${level(i / 100).toFixed(4)}`);
  writeFileSync(inFolder('rep.csv'), `time_s,level\n${rows.join('\n')}\n`);
  writeFileSync(
    inFolder('still.csv'),
    `time_s,level\n${rows.map((_, i) => `${i / 100},0`).join('\n')}\n`,
  );
  writeFileSync(
    inFolder('brake.hex'),
    '05 01 09 04 A1 01 05 02 09 C5 15 00 26 FF 0F 75 0C 95 01 81 42 75 04 81 03 C0',
  );
}

beforeAll(async () => {
  writeFiles();
  const dry = ['--weeks', '1', '--seed', '1', '--to', '2026-11-25'];
  await asked(['virtual', 'history', ...dry]);
  await asked(['trace', 'import', inFolder('friday.csv')]);
  for (const name of ['driven.csv', 'fitted.csv', 'bare.csv'])
    await asked(['trace', 'import', inFolder(name)]);
  const drill = ['drill', '--headless', '--seed', '2', '--source'];
  for (const few of [
    ['--reps', '3', '--calls', '0.5'],
    ['--stint', '40', '--reps', '2'],
  ])
    await asked(
      ['drill', ...VIRTUAL, '--corner', 'kiln-hairpin', '--car', 'prototype', ...few],
      live,
    );
  const skilled = [...drill, 'virtual:skilled', '--target', inFolder('logged.yaml')];
  await asked([...skilled, '--reps', '8', '--self-rating']);
}, 120_000);

const VIRTUAL = ['--headless', '--seed', '1', '--source', 'virtual:club'];
const BUNDLED = {
  car: ['gt', 'light-single-seater', 'prototype', 'single-seater', 'touring'],
  corner: ['kiln-hairpin', 'ferry-chicane', 'coil-bend', 'twin-barrows', 'heron-sweep'],
  target: ['hairpin', 'downhill-braking', 'first-release', 'fast-sweeper'],
  plan: ['maintenance', 'new-corner', 'late-stint', 'long-pedal', 'before-test-day'],
  event: ['sallow-fen', 'sallow-fen-race'],
};

describe('answers keep to their schemas', () => {
  test.each(['car', 'corner', 'target', 'plan', 'event'].map((kind) => ({ kind })))(
    '$kind list, in full and of an empty folder',
    async ({ kind }) => {
      await asked([kind, 'list']);
      await asked([kind, 'list'], empty);
    },
  );

  test.each(Object.entries(BUNDLED).flatMap(([kind, ids]) => ids.map((id) => ({ kind, id }))))(
    '$kind show $id',
    async ({ kind, id }) => {
      await asked([kind, 'show', id]);
    },
  );

  test.each(['car', 'corner', 'target', 'plan', 'event'])('%s check', async (kind) => {
    await asked([kind, 'check', inFolder('bad.yaml'), inFolder('logged.yaml'), '/no/such/file']);
  });

  test.each([
    [['car', 'match', 'gt', '--source', 'virtual']],
    [['car', 'match', 'prototype', '--source', 'virtual', '--speed', '280', '--travel-mm', '30']],
    [
      [
        'corner',
        'new',
        'Pump',
        '--approach-kmh',
        '190',
        '--slowest-kmh',
        '95',
        '--zone-m',
        '110',
      ].concat(['--turn-deg', '85', '--gear', '3']),
    ],
    [['target', 'derive', '--car', 'gt', '--corner', 'kiln-hairpin', '--against-gear', '3']],
    [['target', 'derive', '--car', 'prototype', '--corner', 'twin-barrows']],
    [['target', 'derive', '--car', 'single-seater', '--corner', 'heron-sweep']],
    [['target', 'derive', '--car', 'gt', '--corner', 'ferry-chicane', '--model', 'point-mass']],
    [['target', 'show', inFolder('logged.yaml')]],
    [['target', 'shape', '--peak', '0.85', '--hit-s', '0.12', '--release-s', '1.7']],
    [
      ['target', 'shape', '--peak', '0.8', '--hit-s', '0.13', '--release-s', '1.5'].concat([
        '--name',
        'Mine',
        '--out',
        inFolder('mine.yaml'),
      ]),
    ],
    [['target', 'learn', '--reps', 'hairpin', '--best', '5']],
    [
      ['target', 'learn', '--trace', 'friday', '--zone', '1,3,5,7,9', '--full-scale', '80'].concat([
        '--out',
        inFolder('learned.yaml'),
      ]),
    ],
    [['target', 'show', inFolder('learned.yaml')]],
    [['event', 'show', 'sallow-fen', '--session', 'race']],
  ])('%j', async (argv) => {
    await asked(argv);
  });

  test.each([
    [['hairpin', '--reps', '1']],
    [['hairpin', '--reps', '4', '--source', 'virtual:novice']],
    [['--corner', 'coil-bend', '--car', 'gt', '--source', 'virtual:novice', '--reps', '4']],
  ])('drill %j', async (argv) => {
    await asked(['drill', ...VIRTUAL, ...argv], empty);
  });

  test('a plan and the laps of an event', async () => {
    await asked(['drill', ...VIRTUAL, '--plan', inFolder('short.yaml')], other);
    const { tonight } = await asked(
      ['drill', ...VIRTUAL, '--event', inFolder('two-corners.yaml'), '--laps', '1'],
      other,
    );
    expect(tonight).toBeInstanceOf(Array);
  }, 120_000);

  test.each([
    [['note', 'add', 'ease over the drain', '--corner', 'kiln-hairpin', '--gear', '2']],
    [['note', 'add', 'light rear', '--rep', '2']],
    [['note', 'list']],
    [['progress']],
    [['progress', 'hairpin', '--weeks', '1']],
    [['progress', '--all']],
    [['report', 'last']],
    [['report', '2026-11-24']],
    [['report', '--weeks', '1040']],
    [['brief', 'kiln-hairpin', '--car', 'gt']],
    [['brief', 'sallow-fen']],
    [['brief', 'coil-bend', '--car', 'prototype', '--driver', 'driver']],
    [['rescore', '--score-version', '1']],
    [['rescore', '--score-version', '2']],
    [['corner', 'fit', '--trace', 'fitted', '--zone', '1,2', '--car', 'gt']],
    [['corner', 'fit', '--trace', 'bare', '--zone', '1', '--turn-deg', '165']],
    [['trace', 'zones']],
    [['trace', 'zones', 'friday']],
    [['trace', 'zones', 'driven', '--full-scale', '80']],
    [['trace', 'score', 'friday', '--zone', '1', '--target', 'hairpin', '--full-scale', '80']],
    [['trace', 'score', 'friday', '--zone', '1', '--target', 'hairpin', '--full-scale', '5000']],
    [
      ['trace', 'compare', 'friday', '--zone', '1,3,5,7,9'].concat([
        '--target',
        inFolder('logged.yaml'),
      ]),
    ],
    [['score', '--target', 'hairpin', '--trace', inFolder('rep.csv')]],
    [['score', '--target', 'hairpin', '--trace', inFolder('still.csv')]],
    [['rig', 'decode', '--descriptor', inFolder('brake.hex')]],
    [['rig', 'decode', '--descriptor', inFolder('brake.hex'), '--report', '00 08']],
    [['doctor']],
    [['export', '--csv', inFolder('reps.csv')]],
    [['backup', '--out', inFolder('copy.sqlite')]],
  ])('%j on a history', async (argv) => {
    await asked(argv);
  });

  test('a practice with the live car, and its corner', async () => {
    const { blocks } = await asked(['report', 'last'], live);
    expect(blocks).toMatchObject([{ along_s: null, along_from_turn_in_m: expect.any(Array) }]);
    await asked(['brief', 'kiln-hairpin', '--car', 'prototype'], live);
    await asked(['rescore', '--score-version', '1'], live);
  });

  test('twelve weeks with every figure', async () => {
    const many = mkdtempSync(join(tmpdir(), 'answers-many-'));
    try {
      practiseForWeeks(many);
      expect(await asked(['progress', '--driver', 'Kim'], many)).toMatchObject({
        targets: [
          {
            typical_error_level: expect.any(Number),
            felt_timing_agreement: expect.any(Number),
            spread_change: { average_error: { verdict: 'improving', ratio: expect.any(Number) } },
            hidden_trend: { verdict: 'improving', mann_kendall_statistic: expect.any(Number) },
            practice_curve: { plateau_level: expect.any(Number) },
            control_chart: { centre_level: expect.any(Number) },
          },
        ],
      });
      await asked(['progress', '--all'], many);
      await asked(['report', '--weeks', '20'], many);
    } finally {
      rmSync(many, { recursive: true });
    }
  });

  test('nothing kept yet', async () => {
    const nothing = mkdtempSync(join(tmpdir(), 'answers-nothing-'));
    try {
      expect(await asked(['progress'], nothing)).toEqual({ targets: [] });
      expect(await asked(['progress', '--all'], nothing)).toEqual({ targets: [] });
      expect(await asked(['note', 'list'], nothing)).toEqual({ notes: [] });
      expect(await asked(['trace', 'zones'], nothing)).toEqual({ traces: [] });
      await asked(['brief', 'kiln-hairpin', '--car', 'gt'], nothing);
    } finally {
      rmSync(nothing, { recursive: true });
    }
  });

  test('too few reps for any figure are null, and are there', async () => {
    const few = mkdtempSync(join(tmpdir(), 'answers-few-'));
    try {
      await asked(['drill', ...VIRTUAL, '--target', 'hairpin', '--reps', '1'], few);
      await asked(['report', 'last'], few);
      await asked(['report', '--weeks', '2'], few);
      expect(await asked(['progress'], few)).toMatchObject({
        targets: [
          {
            typical_error_level: null,
            practice_curve: null,
            spread_curve: null,
            felt_timing_agreement: null,
            spread_change: { average_error: { verdict: null, ratio: null, ratio_interval: null } },
            control_chart: { centre_level: null },
          },
        ],
      });
    } finally {
      rmSync(few, { recursive: true });
    }
  });

  test('an archive, tried, taken in, and known', async () => {
    const file = inFolder('all.zip');
    await asked(['export', '--out', file]);
    const there = mkdtempSync(join(tmpdir(), 'answers-there-'));
    try {
      expect(await asked(['import', file, '--dry-run'], there)).toMatchObject({ dry_run: true });
      await asked(['import', file], there);
      expect(await asked(['import', file], there)).toMatchObject({ reps: { added_count: 0 } });
    } finally {
      rmSync(there, { recursive: true });
    }
  });

  test('rig list and rig check', async () => {
    const device = deviceOf(1, 'test pedals', NAMED_PEDALS);
    const found = { ...device, maker: '', kind: 'rig', problem: null } as const;
    const listing = fakeContext(folder);
    const json = { positionals: [], values: { json: true } };
    await rigList(json, listing, async () => [found]);
    holds('rig list', listing.printed());
    const axis = { device: identity(1), calibration: calibration(0, 1000) };
    const rig: Rig = {
      axes: [
        { ...axis, role: 'brake', field: WORD },
        { ...axis, role: 'steering', field: { ...WORD, bitOffset: 16 } },
      ],
      buttons: [],
      wheelLockDeg: 900,
      foot: 'left',
      footwear: '',
    };
    const batches = Array.from({ length: 100 }, (_, i) =>
      batchOf(10_000 * (i + 1), [[0, 10_000 * i, [...word(10 * i), ...word(500)]]], 2),
    );
    const source = {
      label: 'test',
      devices: [deviceOf(1, 'test pedals')],
      batches$: from(batches),
      events$: NEVER,
      simulated: true,
      see: () => undefined,
      close: async () => undefined,
    };
    const checking = fakeContext(folder);
    const oneSecond = { positionals: [], values: { json: true, seconds: '1' } };
    await rigCheck(oneSecond, checking, async () => ({ source, rig }));
    const answer = holds('rig check', checking.printed());
    expect(answer).toMatchObject({
      devices: [
        {
          axes: [
            { role: 'brake', angle_deg: null },
            { role: 'steering', level: null },
          ],
        },
      ],
    });
  });

  test('of every command that has one', () => {
    expect(ANSWERING.filter((name) => !answered.has(name))).toEqual([]);
  });

  test('an answer with a field too many, one too few or of the wrong kind is told apart', async () => {
    const validate = validators.get('note add')!;
    expect(validate({ id: 1 })).toBe(true);
    expect(validate({ id: 1, more: 2 })).toBe(false);
    expect(validate({})).toBe(false);
    expect(validate({ id: null })).toBe(false);
  });
});
