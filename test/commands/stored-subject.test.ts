import { beforeAll, expect, test } from 'vitest';
import { StoredSubjects } from '../../src/commands/stored-subject.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { StoredRep } from '../../src/history/store.ts';
import { scoreLiveRep } from '../../src/score/score-live-rep.ts';
import { temporaryFolder } from '../temporary-folder.ts';
import { runCommand } from './run-command.ts';

const folder = temporaryFolder('subject');
let reps: StoredRep[] = [];

beforeAll(async () => {
  const { code, stderr } = await runCommand([
    ...['drill', '--corner', 'kiln-hairpin', '--car', 'gt', '--stint', '60', '--calls', '1'],
    ...['--headless', '--reps', '2', '--seed', '3', '--source', 'virtual', '--data-dir', folder],
  ]);
  expect([code, stderr]).toEqual([0, expect.any(String)]);
  const history = openHistory(folder);
  reps = [...history.reps({})];
  history.close();
});

test('the zone of each live rep is built again, hot brakes and late calls included', async () => {
  expect(reps).toHaveLength(2);
  const subjects = new StoredSubjects(folder);
  const history = openHistory(folder);
  for (const rep of reps) {
    const zone = await subjects.zone(rep);
    if (zone.kind === 'lost') return expect.unreachable(zone.reason);
    expect(zone.value.car.discStartC).toEqual(rep.live?.discC);
    expect(zone.value.call?.word ?? null).toBe(rep.live?.call);
    const again = scoreLiveRep(history.record(rep.id), zone.value);
    expect(again.version).toBe(2);
    // what is stored is what comes out again, to the bit
    for (const outcome of rep.outcomes) if (outcome.version === 2) expect(again).toEqual(outcome);
  }
  history.close();
});

test('a car, corner or variant that is not there any more is said', async () => {
  const subjects = new StoredSubjects(folder);
  const [rep] = reps;
  for (const change of [{ car: 'no-car' }, { corner: 'nowhere' }, { variant: 'never' }])
    expect((await subjects.zone({ ...rep!, ...change })).kind).toBe('lost');
  expect(await subjects.zone({ ...rep!, targetVersion: 'older' })).toEqual({
    kind: 'lost',
    reason: 'car gt or corner kiln-hairpin has been changed since it was driven',
  });
  expect((await subjects.zone({ ...rep!, live: null })).kind).toBe('lost');
});
