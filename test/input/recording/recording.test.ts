import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import fc from 'fast-check';
import { firstValueFrom, from, lastValueFrom, NEVER, of, Subject, toArray } from 'rxjs';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { recordReports } from '../../../src/input/recording/record-reports.ts';
import { openReplaySource } from '../../../src/input/replay-source.ts';
import type { ReportBatch } from '../../../src/input/report-batch.ts';
import type { DeviceEvent, ReportSource } from '../../../src/input/report-source.ts';
import type { RigDevice } from '../../../src/input/rig-device.ts';
import { Problem } from '../../../src/problem.ts';
import { NAMED_PEDALS } from '../../reference/descriptors.ts';
import { batchOf, deviceOf, type Report } from '../report-batches.ts';

let dir = '';
let file = '';
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), 'recording-'));
  file = join(dir, 'stint.jsonl');
});
afterEach(() => rm(dir, { recursive: true }));

const PEDALS = deviceOf(1, 'pedals', NAMED_PEDALS);
const WHEEL = deviceOf(2, 'wheel');

function sourceOf(
  batches$: ReportSource['batches$'],
  events$: ReportSource['events$'] = NEVER,
  devices: readonly RigDevice[] = [PEDALS, WHEEL],
): ReportSource {
  return {
    label: '2 devices',
    devices,
    batches$,
    events$,
    simulated: false,
    see: () => undefined,
    close: async () => undefined,
  };
}

/** The reports of batches as plain values, read at once as the contract asks. */
function plain(batch: ReportBatch): unknown {
  return [
    batch.untilUs,
    batch.dropped,
    Array.from({ length: batch.count }, (_, i) => [
      batch.device[i],
      batch.timeUs[i],
      [...batch.bytes.subarray(batch.offset[i], batch.offset[i]! + batch.length[i]!)],
    ]),
  ];
}

async function record(batches: readonly ReportBatch[]): Promise<void> {
  const source = await recordReports(sourceOf(from(batches)), file, null);
  await lastValueFrom(source.batches$, { defaultValue: null });
  await source.close();
}

async function replayed(pace: 'fast' | 'recorded' = 'fast'): Promise<unknown[]> {
  const source = await openReplaySource(file, { pace });
  const found: unknown[] = [];
  await source.batches$.forEach((batch) => {
    found.push(plain(batch));
  });
  await source.close();
  return found;
}

const REPORTS: readonly Report[] = [
  [0, 1_000_000.5, [1, 2, 255]],
  [1, 1_000_700, []],
];

describe('what was recorded is replayed', () => {
  test('report by report', async () => {
    const batches = [batchOf(1_008_000, REPORTS, 3), batchOf(1_016_000, [], 4)];
    const expected = batches.map(plain);
    await record(batches);
    expect(await replayed()).toEqual(expected);
    expect(await replayed('recorded')).toEqual(expected);
  });

  test('whatever the bytes', async () => {
    const report = fc.tuple(
      fc.nat({ max: 1 }),
      fc.nat(),
      fc.array(fc.nat({ max: 255 }), { maxLength: 64 }),
    );
    const batch = fc.tuple(fc.nat(), fc.array(report, { maxLength: 8 }), fc.nat());
    await fc.assert(
      fc.asyncProperty(fc.array(batch, { maxLength: 8 }), async (given) => {
        await rm(file, { force: true });
        const batches = given.map(([untilUs, reports, dropped]) =>
          batchOf(untilUs, reports, dropped),
        );
        const expected = batches.map(plain);
        await record(batches);
        expect(await replayed()).toEqual(expected);
      }),
      { numRuns: 25 },
    );
  });

  test('with devices, rig and events in their order', async () => {
    const rig = { axes: [], buttons: [], wheelLockDeg: 900, foot: 'left', footwear: '' } as const;
    const events$ = new Subject<DeviceEvent>();
    const batches$ = new Subject<ReportBatch>();
    const recorded = await recordReports(sourceOf(batches$, events$), file, rig);
    recorded.batches$.subscribe();
    recorded.batches$.subscribe();
    batches$.next(batchOf(8000, []));
    events$.next({ kind: 'lost', device: 1, atUs: 8100, reason: 'unplugged' });
    events$.next({ kind: 'back', device: 1, atUs: 8200 });
    batches$.next(batchOf(16000, []));
    await recorded.close();

    const source = await openReplaySource(file, { pace: 'fast' });
    expect(source.rig).toEqual(rig);
    expect(
      source.devices.map(({ identity, name, descriptor }) => ({ identity, name, descriptor })),
    ).toEqual([
      { identity: PEDALS.identity, name: 'pedals', descriptor: NAMED_PEDALS },
      { identity: WHEEL.identity, name: 'wheel', descriptor: null },
    ]);
    const seen: unknown[] = [];
    source.events$.subscribe((event) => seen.push(event));
    await source.batches$.forEach((batch) => {
      seen.push(batch.untilUs);
    });
    expect(seen).toEqual([
      8000,
      { kind: 'lost', device: 1, atUs: 8100, reason: 'unplugged' },
      { kind: 'back', device: 1, atUs: 8200 },
      16000,
    ]);
    await source.close();
  });

  test('at its own pace, and can be closed while it waits', async () => {
    await record([batchOf(0, []), batchOf(3_600_000_000, [])]);
    const source = await openReplaySource(file, { pace: 'recorded' });
    const found: number[] = [];
    const done = source.batches$.forEach((batch) => {
      found.push(batch.untilUs);
    });
    // Time enough for a replay that does not wait to give all of it.
    for (let turn = 0; turn < 100; turn++) await setImmediate();
    expect(found.length).toBeLessThanOrEqual(1);
    await source.close();
    await done;
    expect(found.length).toBeLessThanOrEqual(1);
  });
});

test('the file is text of documented lines', async () => {
  await record([batchOf(1_008_000, REPORTS, 3)]);
  const [header, batch, end] = (await readFile(file, 'utf8')).split('\n');
  expect(JSON.parse(header!)).toMatchObject({
    format: 'ebbline reports',
    version: 1,
    label: '2 devices',
    devices: [{ name: 'pedals' }, { name: 'wheel', descriptor: null }],
    rig: null,
  });
  expect(batch).toBe(
    '{"until_us":1008000,"dropped":3,"reports":[[0,1000000.5,"0102ff"],[1,1000700,""]]}',
  );
  expect(end).toBe('');
});

describe('a damaged recording', () => {
  const lines = async (): Promise<string[]> => {
    await record([batchOf(8000, [[0, 1, [1]]]), batchOf(16000, []), batchOf(24000, [])]);
    return (await readFile(file, 'utf8')).trimEnd().split('\n');
  };

  test('whose last line was cut off is replayed up to there', async () => {
    const text = (await lines()).join('\n');
    await writeFile(file, text.slice(0, -5));
    expect(await replayed()).toHaveLength(2);
  });

  test.each([
    ['a line cut off in the middle', '{"until_us":16000,"dro', 'it is not JSON'],
    ['an unknown device', '{"until_us":1,"dropped":0,"reports":[[2,1,"00"]]}', 'device 2'],
    ['half a byte', '{"until_us":1,"dropped":0,"reports":[[0,1,"0"]]}', 'hexadecimal'],
    ['no time', '{"until_us":1,"dropped":0,"reports":[[0,null,"00"]]}', '"time_us"'],
    ['no watermark', '{"dropped":0,"reports":[]}', '"until_us"'],
    ['no reports', '{"until_us":1,"dropped":0}', '"reports"'],
    ['a report that is no list', '{"until_us":1,"dropped":0,"reports":[7]}', 'a report is not'],
    ['an unknown event', '{"event":"asleep","device":0,"at_us":1}', '"event"'],
    ['no object', '7', 'no object'],
  ])('names the line: %s', async (_name, bad, words) => {
    const [header, first, , last] = await lines();
    await writeFile(file, [header, first, bad, last, ''].join('\n'));
    const failure = replayed();
    await expect(failure).rejects.toThrow(words);
    await expect(failure).rejects.toMatchObject({ where: `${file}:3`, name: 'Problem' });
  });

  test('is refused on its last line too where that is JSON', async () => {
    const [header, first] = await lines();
    await writeFile(file, [header, first, '{"dropped":0,"reports":[]}'].join('\n'));
    await expect(replayed()).rejects.toMatchObject({ where: `${file}:3` });
  });

  test.each([
    ['is empty', '', 'not the header'],
    ['is no recording', 'time,brake\n0,1\n', 'not the header'],
    ['is newer', '{"format":"ebbline reports","version":2}\n', 'version 2, this program knows 1'],
    [
      'lacks devices',
      '{"format":"ebbline reports","version":1,"label":"","rig":null}\n',
      'devices',
    ],
  ])('%s: refused before anything is replayed', async (_name, text, words) => {
    await writeFile(file, text);
    await expect(openReplaySource(file, { pace: 'fast' })).rejects.toThrow(words);
    await expect(openReplaySource(file, { pace: 'fast' })).rejects.toMatchObject({
      where: `${file}:1`,
    });
  });

  test('is not there, or is a folder', async () => {
    await expect(openReplaySource(file, { pace: 'fast' })).rejects.toBeInstanceOf(Problem);
    await mkdir(file);
    await expect(openReplaySource(file, { pace: 'fast' })).rejects.toThrow('folder');
  });

  test('brings no control characters to the screen', async () => {
    const bad = deviceOf(1, 'pe\u001b[31mdals{bold}\u009b');
    const source = await recordReports(sourceOf(of(), NEVER, [bad]), file, null);
    await source.close();
    const replay = await openReplaySource(file, { pace: 'fast' });
    expect(replay.devices[0]?.name).toBe('pe[31mdals(bold)');
    await replay.close();
  });
});

describe('recordReports', () => {
  test('never overwrites a file', async () => {
    await writeFile(file, 'precious');
    await expect(recordReports(sourceOf(of()), file, null)).rejects.toBeInstanceOf(Problem);
    expect(await readFile(file, 'utf8')).toBe('precious');
  });

  test('a folder that is not there is a problem', async () => {
    const lost = join(dir, 'lost', 'stint.jsonl');
    await expect(recordReports(sourceOf(of()), lost, null)).rejects.toMatchObject({ where: lost });
  });

  test('passes everything on', async () => {
    const batches = [batchOf(8000, REPORTS), batchOf(16000, [])];
    const source = await recordReports(sourceOf(from(batches)), file, null);
    expect(await firstValueFrom(source.batches$.pipe(toArray()))).toEqual(batches);
    await source.close();
  });

  test.runIf(process.platform === 'linux')('a full disk is told when closing', async () => {
    // Opened anew, because /dev/full exists and is never created.
    const { Recorder } = await import('../../../src/input/recording/recorder.ts');
    const { createWriteStream } = await import('node:fs');
    const recorder = new Recorder('/dev/full', createWriteStream('/dev/full'));
    recorder.write('line\n');
    await expect(recorder.close()).rejects.toThrow('not complete');
  });
});
