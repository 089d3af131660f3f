import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import type { StoredRep } from '../../src/history/store.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { type Ran, runCommand } from './run-command.ts';

const folder = temporaryFolder('drill-event');
const event = join(folder, 'event.yaml');
const dataDir = join(folder, 'data');
const drill = (...more: string[]): Promise<Ran> =>
  runCommand([
    ...['drill', '--event', event, '--source', 'virtual:club', '--headless', '--seed', '3'],
    ...['--data-dir', dataDir, ...more],
  ]);

writeFileSync(
  event,
  `name: Two corners
date: 2027-01-10
car: gt
sessions: [{ session: race, variant: race, late_call_share: 1 }, { session: qualifying }]
zones: [{ corner: kiln-hairpin, to_next_s: 7 }, { corner: coil-bend, to_next_s: 7 }]
`,
);

describe('laps driven by the virtual driver', () => {
  let ran: Ran;
  let stored: readonly StoredRep[];

  beforeAll(async () => {
    ran = await drill('--laps', '2');
    const store = openHistory(dataDir);
    stored = [...store.reps({})];
    store.close();
  });

  test('tell the reps, each corner by itself, and that there is nothing to rank yet', () => {
    expect(ran).toMatchObject({ code: 0 });
    const lines = ran.stdout.split('\n');
    const order = [
      /^Two corners, race {2}virtual driver, club$/,
      /^laps 1 to 2 of 2$/,
      /^Kiln hairpin, race +rep {2}1 /,
      /^Coil bend, race +rep {2}4 /,
      /^corner +reps +score +release error +cause$/,
      /^Kiln hairpin +2 +\d+ +\d\.\d % /,
      /^Coil bend +2 /,
      /^The laps are done\.$/,
      /^Tonight/,
      /^Not enough reps to rank any corner/,
    ].map((pattern) => lines.findIndex((line) => pattern.test(line)));
    expect(order).not.toContain(-1);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  test('are ordinary reps of their corners, in one practice, with their late calls', () => {
    expect(
      stored.map(({ phase, order, targetId, variant, live }) => [
        ...[phase, order, targetId.split('/').slice(0, 2).join('/'), variant, live?.call ?? null],
      ]),
    ).toEqual([
      ['block', 'serial', 'gt/kiln-hairpin', 'race', expect.any(String)],
      ['block', 'serial', 'gt/coil-bend', 'race', 'defend'],
      ['block', 'serial', 'gt/kiln-hairpin', 'race', expect.any(String)],
      ['block', 'serial', 'gt/coil-bend', 'race', 'defend'],
    ]);
    expect(new Set(stored.map(({ practice }) => practice.id)).size).toBe(1);
  });

  test('the same as JSON', async () => {
    const { code, stdout } = await drill('--laps', '1', '--session', 'qualifying', '--json');
    expect(code).toBe(0);
    const json = JSON.parse(stdout);
    expect(json).toMatchObject({
      event: event.split('/').at(-1)!.replace('.yaml', ''),
      session: 'qualifying',
      plan: null,
      tonight: [],
    });
    expect(json.blocks[0].targets.map(({ name }: { name: string }) => name)).toEqual([
      'Kiln hairpin, qualifying',
      'Coil bend, qualifying',
    ]);
    expect(json.not_ranked.map(({ corner }: { corner: string }) => corner)).toEqual([
      'Kiln hairpin',
      'Coil bend',
    ]);
    expect(json.not_ranked_reason).toMatch(/^Not enough reps to rank any corner/);
  });
});

describe('an event says itself what is drilled', () => {
  test.each([
    [['--target', 'hairpin'], '--target: --target beside --event is not possible here'],
    [['--reps', '3'], '--reps: --reps beside --event is not possible here\n'],
    [['--variant', 'wet'], 'The session says it: say --session S.'],
    [['--session', 'rain'], 'Say one of: race, qualifying.'],
    [['--laps', '0'], '--laps: "0" is not possible here'],
    [['hairpin'], '--event: "hairpin" beside --event is not possible here'],
  ])('%j beside it is a usage error', async (more, message) => {
    const { code, stderr } = await drill(...more);
    expect(code).toBe(2);
    expect(`${stderr}\n`).toContain(message);
  });

  test('laps without an event', async () => {
    const { code, stderr } = await runCommand(['drill', 'hairpin', '--headless', '--laps', '3']);
    expect(code).toBe(2);
    expect(stderr).toContain('--laps without --event');
  });
});
