import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { runDrill } from '../../src/commands/drill-loop.ts';
import { PracticeLog } from '../../src/commands/practice-log.ts';
import { StoredSubjects } from '../../src/commands/stored-subject.ts';
import type { DrillSetup } from '../../src/drill/drill-setup.ts';
import type { BlockSummary, DrillView } from '../../src/drill/drill-view.ts';
import { pacedIdentity } from '../../src/drill/plan/paced-identity.ts';
import type { PracticeZone } from '../../src/drill/plan/planned-practice.ts';
import { openHistory } from '../../src/history/open-history.ts';
import { createRigDecoder } from '../../src/input/rig/rig-decoder.ts';
import { openVirtualSource } from '../../src/input/virtual/open-virtual-source.ts';
import { virtualRig } from '../../src/input/virtual/virtual-rig.ts';
import { scorePacedRep } from '../../src/score/score-paced-rep.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { readTarget } from '../../src/target/read-target.ts';
import { setup } from '../drill/drill-rig.ts';
import { aPractice } from '../history/fixtures.ts';
import { runCommand } from './run-command.ts';

const file = new URL('../../profiles/targets/hairpin.yaml', import.meta.url);
const HAIRPIN = readTarget(readFileSync(file, 'utf8'), 'hairpin.yaml');
const BRISK: DrillSetup['timing'] = { countdownS: 1, holdS: 0.1, showS: 0, restS: 0.1 };

test('a virtual driver with late hands is scored by the hands, kept with that, and rescored', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-paced-'));
  const store = openHistory(folder);
  const { startedAt, ...start } = aPractice();
  const log = new PracticeLog(store, start, null, () => startedAt);
  const zone: PracticeZone = {
    target: pacedIdentity(HAIRPIN),
    live: null,
    repsInLife: 0,
    recent: [],
    reference: null,
    paced: true,
  };
  const source = openVirtualSource({ preset: 'skilled', seed: 4, pace: 'simulated' });
  const reps = Array.from({ length: 8 }, () => ({ zone, variation: null }));
  const views: Pick<DrillView, 'phase' | 'nowS'>[] = [];
  const summaries: BlockSummary[] = [];
  await runDrill(
    source,
    createRigDecoder(virtualRig(), source.devices),
    setup({
      target: zone.target,
      timing: BRISK,
      plan: {
        name: 'P',
        remarks: [],
        blocks: [{ phase: 'block', order: 'blocked', reps }],
        feedback: { kind: 'scheduled' },
        mostShownInARow: 3,
        hardReps: { fromLevel: 0.6, most: 60, fatigueLimit: 2.8 },
        condition: null,
      },
    }),
    {
      unattended: true,
      store: (rep) => log.add(rep),
      onView: ({ phase, nowS }) => void views.push({ phase, nowS }),
      onSummary: (summary) => void summaries.push(summary),
    },
  );
  await source.close();

  const stored = [...store.reps({})];
  expect(stored).toHaveLength(8);
  const subjects = new StoredSubjects(folder);
  const [byWheel, byClock]: number[][] = [[], []];
  for (const rep of stored) {
    expect(rep).toMatchObject({
      targetId: 'hairpin/paced',
      targetChange: { kind: 'paced by the steering' },
    });
    const target = await subjects.target(rep);
    if (target.kind === 'lost') return expect.unreachable(target.reason);
    const record = store.record(rep.id);
    expect(scorePacedRep(record, target.value)).toEqual(rep.outcomes[0]);
    byWheel!.push(rep.outcomes[0]!.score);
    byClock!.push(scoreRep(record, HAIRPIN).score);
  }
  store.close();
  const mean = (scores: readonly number[]): number =>
    scores.reduce((sum, score) => sum + score, 0) / scores.length;
  expect(mean(byWheel!)).toBeGreaterThan(90);
  expect(mean(byClock!)).toBeLessThan(mean(byWheel!) - 3);
  // the now line stood still in front of a late wheel
  const places = views.filter(({ phase }) => phase === 'braking').map(({ nowS }) => nowS);
  const still = places.filter((place, i) => i > 0 && place === places[i - 1] && place > 1);
  expect(still.length).toBeGreaterThan(8);
  // and the block's curves lie on the places of the target
  expect(summaries[0]!.spreadLevel).toBeLessThan(0.05);

  // the schedule of versions is the same: nothing is lost
  const again = await runCommand([
    'rescore',
    '--score-version',
    '1',
    '--json',
    '--data-dir',
    folder,
  ]);
  expect(JSON.parse(again.stdout)).toMatchObject({ had_version_count: 8, not_rescorable: [] });
  rmSync(folder, { recursive: true });
});
